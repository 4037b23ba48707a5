import { createEffect, createSignal, For, Show } from 'solid-js';
import { RULE_WORDS } from '../../../shared/checks/decision-rules.ts';
import type { DecisionRule } from '../../../shared/sheet/format.ts';
import { SelectField } from '../kit/select-field.tsx';
import { TextField } from '../kit/text-field.tsx';
import { isResumed, NEW_LINE } from '../kit/typed-aside.ts';
import { useSheet } from '../state/context.ts';
import { type TitleBox, titleBoxes } from '../state/title-boxes.ts';

/** The title block: what the job is, for whom, and by which rule it is judged. */
export const TitleBlock = () => {
  const { sheet } = useSheet();
  const [all, setAll] = createSignal(matchMedia('(min-width: 641px)').matches);
  const title = () => sheet.state.title;
  const aside = (field: string) => ({ sheet: sheet.document.id, cell: '', field });
  createEffect(() => isResumed((field, cell) => cell === '' && field !== NEW_LINE) && setAll(true));
  const box = ({ field, label }: TitleBox) => (
    <div class="title-box col-span-2 max-[900px]:col-span-6">
      <TextField
        label={label}
        value={title()[field]}
        aside={aside(field)}
        {...(field === 'date' ? { type: 'date' as const } : { lines: 1 })}
        onCommit={(text) => sheet.document.setTitle(field, text)}
      />
    </div>
  );
  return (
    <section
      class="title-block grid grid-cols-[repeat(12,1fr)] lined-b-wide [&_:is(input,select,textarea)]:(min-h-28px p-0 lined-none lined-b-dotted-rule bg-transparent) [&_:is(input,select)]:touch:min-h-44px [&_textarea]:(block resize-none [field-sizing:content])"
      aria-label="Title block"
    >
      <div class="title-box col-span-6 max-[900px]:col-span-full [&_textarea]:(text-head font-bold)">
        <TextField
          label="Title"
          lines={1}
          value={title().title}
          aside={aside('title')}
          onCommit={(text) => sheet.document.setTitle('title', text)}
        />
      </div>
      <For each={titleBoxes().filter(({ first }) => first)}>{box}</For>
      <Show
        when={all()}
        fallback={
          <div class="title-box col-span-full">
            <button type="button" class="plain" aria-expanded={false} onClick={() => setAll(true)}>
              More of the title block
            </button>
          </div>
        }
      >
        <For each={titleBoxes().filter(({ first }) => !first)}>{box}</For>
        <div class="title-box col-span-2 max-[900px]:col-span-6">
          <TextField
            label="Reference temperature"
            value={title().referenceTemperature}
            aside={aside('referenceTemperature')}
            lines={1}
            onCommit={(text) =>
              import('../state/reference-temperature.ts').then(({ takeReference }) =>
                takeReference(sheet, text),
              )
            }
          />
        </div>
        <div class="title-box col-span-4 max-[900px]:col-span-6">
          <SelectField
            label="Checks follow"
            value={sheet.state.rule}
            options={(Object.entries(RULE_WORDS) as Array<[DecisionRule, string]>).map(([value, label]) => ({
              value,
              label,
            }))}
            onCommit={(rule) => sheet.document.setRule(rule as DecisionRule)}
          />
        </div>
        <div class="title-box col-span-6">
          <TextField
            label="Keywords, with commas"
            value={title().tags?.join(', ')}
            aside={aside('tags')}
            onCommit={(text) =>
              sheet.document.setTitle('tags', text === '' ? undefined : text.split(/\s*,\s*/).filter(Boolean))
            }
          />
        </div>
        <div class="title-box col-span-full">
          <TextField
            label="Note"
            value={title().note}
            aside={aside('note')}
            lines={1}
            onCommit={(text) => sheet.document.setTitle('note', text)}
          />
        </div>
      </Show>
    </section>
  );
};
