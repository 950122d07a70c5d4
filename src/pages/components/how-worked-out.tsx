import type { Working, WorkingInput } from '../../rules/explain/working.js';
import { basisWords, inputWords, showValue, swayWords, workingTitle } from '../words/working-words.js';
import { Table } from './table.js';

interface HowProps {
  readonly workings: readonly Working[];
  /** What was worked out, for those who hear the page instead of seeing it. */
  readonly what: string;
}

/** On asking: formula, source and each input with how it is known, and the input that matters most. */
export function HowWorkedOut({ workings, what }: HowProps) {
  if (workings.length === 0) return null;
  return (
    <details class="more">
      <summary>
        How worked out<span class="hidden-words">: {what}</span>
      </summary>
      <div class="stack">
        {workings.map((working) => (
          <WorkingView key={`${working.of} ${working.subject}`} working={working} />
        ))}
      </div>
    </details>
  );
}

function WorkingView({ working }: { readonly working: Working }) {
  const most = working.mattersMost === null ? null : working.inputs[working.mattersMost];
  return (
    <section class="stack-tight small" aria-label={workingTitle(working)}>
      <p>
        <span class="strong">{workingTitle(working)}: </span>
        {showValue(working.value, working.unit)} = {working.formula}.
      </p>
      {working.inputs.length > 0 && (
        <Table
          caption={`What went into it: ${workingTitle(working)}`}
          rows={working.inputs}
          rowKey={(row) => `${row.name} ${row.subject}`}
          columns={[
            { label: 'Input', lead: true, cell: inputWords },
            { label: 'Value', right: true, cell: (row) => showValue(row.value, row.unit) },
            { label: 'Known', cell: (row) => basisWords(row.basis) },
            { label: 'Moves it by', right: true, cell: (row) => swayWords(row, working) },
          ]}
        />
      )}
      {most && <p>{mostWords(most)}</p>}
      <p class="soft">Source: {working.source}</p>
    </section>
  );
}

function mostWords(most: WorkingInput): string {
  const advice = most.basis === 'measured' ? '' : ' Measuring it would narrow the answer most.';
  return `What matters most: ${inputWords(most).toLowerCase()} (${basisWords(most.basis)}).${advice}`;
}
