/** What a style sheet says of a drawing and a file of it must say itself. */
const PROPERTIES = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'font-family',
  'font-size',
  'font-weight',
] as const;

const SHAPES = 'rect, line, path, circle, text';

/** A drawing of the page as a file that stands by itself: its looks written into it, its keys and links taken out. */
const svgFile = (svg: SVGSVGElement): string => {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const copies = copy.querySelectorAll<SVGElement>(SHAPES);
  for (const [i, shape] of [...svg.querySelectorAll<SVGElement>(SHAPES)].entries()) {
    const style = getComputedStyle(shape);
    for (const property of PROPERTIES) {
      const value = style.getPropertyValue(property);
      if (value) copies[i]?.setAttribute(property, value.replaceAll('"', "'"));
    }
  }
  for (const element of [copy, ...copy.querySelectorAll('*')]) {
    for (const name of ['class', 'tabindex', 'role']) element.removeAttribute(name);
  }
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
};

/** Gives a drawing to the browser as a file to keep. */
export const saveSvg = (svg: SVGSVGElement, name: string): void => {
  const url = URL.createObjectURL(new Blob([svgFile(svg)], { type: 'image/svg+xml' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
};
