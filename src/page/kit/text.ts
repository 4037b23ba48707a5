/** A text of the page that is written by hand, where several are written together: one computation instead of one each. */
export const createText = () => {
  const node = document.createTextNode('');
  let now = '';
  return {
    node,
    write: (text: string): void => {
      if (text !== now) node.data = now = text;
    },
  };
};
