import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { SheetScope } from './scope.ts';

/** What others see of a cell, as one text: changes when a reference to it may lead elsewhere or mean another kind of thing. */
export function signatureOf(record: CellRecord, scope: SheetScope): string {
  const { name, role, kind } = record;
  if (role !== 'cell') {
    const measured = scope.isMeasured(record, 'value');
    const type = textOfType(scope.typeOfPlain(record));
    const row = scope.choices.designated(record)?.text ?? '';
    return `${name}|${role}|${kind}|${measured}|${scope.hasReadings(record)}|${scope.hasEnds(record)}|${type}|${row}`;
  }
  const measured = Object.keys(record.outputs ?? {}).filter((output) => scope.isMeasured(record, output));
  const inputs = JSON.stringify(scope.aliasesOf(record));
  return `${name}|${role}|${kind}|${measured}|${scope.readOutputs(record)}|${inputs}`;
}

const typeTexts = new WeakMap<object, string>();

const textOfType = (type: object): string => {
  let text = typeTexts.get(type);
  if (text === undefined) {
    text = JSON.stringify(type);
    typeTexts.set(type, text);
  }
  return text;
};
