import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Finding {
  id: string;
  nodes: Array<{ target: unknown; failureSummary?: string }>;
}

const AGAINST = { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] };
/** What a look can break that holds in another one. */
const COLOURS = { type: 'rule', values: ['color-contrast', 'link-in-text-block'] };

interface AxeWindow {
  axe: { run: (context: Element | Document, options: object) => Promise<{ violations: Finding[] }> };
}

/**
 * What axe finds against WCAG 2.2 AA, each as one line. A target that lies half under a bar that stays in view is looked
 * at again in the middle of the window: there is nothing wrong with it if it is large enough there.
 *
 * @param what `colours`: only what the look decides, where the rest is found by the same walk in another look.
 */
export const findings = async (page: Page, what: 'all' | 'colours' = 'all'): Promise<string[]> => {
  // The policy of the page forbids an added script tag, not what a debugger evaluates.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe);
  const found = (await page.evaluate(
    async (against) => {
      const { axe } = window as unknown as AxeWindow;
      const { violations } = await axe.run(document, { runOnly: against });
      for (const violation of violations.filter((one) => one.id === 'target-size')) {
        const still: Finding['nodes'] = [];
        for (const node of violation.nodes) {
          const element = document.querySelector((node.target as string[])[0] as string);
          element?.scrollIntoView({ block: 'center' });
          const again =
            element && (await axe.run(element, { runOnly: { type: 'rule', values: ['target-size'] } }));
          if (!again || again.violations.length > 0) still.push(node);
        }
        violation.nodes = still;
      }
      return violations.filter((violation) => violation.nodes.length > 0);
    },
    what === 'all' ? AGAINST : COLOURS,
  )) as Finding[];
  return found.flatMap(({ id, nodes }) =>
    nodes.slice(0, 3).map((node) => `${id}: ${JSON.stringify(node.target)} ${node.failureSummary ?? ''}`),
  );
};
