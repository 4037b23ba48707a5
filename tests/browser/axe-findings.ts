import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Finding {
  id: string;
  nodes: Array<{ target: unknown; failureSummary?: string }>;
}

/** What axe finds against WCAG 2.2 AA, each as one line. */
export const findings = async (page: Page): Promise<string[]> => {
  // The policy of the page forbids an added script tag, not what a debugger evaluates.
  await page.evaluate(axe);
  const found = (await page.evaluate(() =>
    (window as unknown as { axe: { run: (o: object) => Promise<{ violations: Finding[] }> } }).axe
      .run({ runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] } })
      .then((result) => result.violations),
  )) as Finding[];
  return found.flatMap(({ id, nodes }) =>
    nodes.slice(0, 3).map((node) => `${id}: ${JSON.stringify(node.target)} ${node.failureSummary ?? ''}`),
  );
};
