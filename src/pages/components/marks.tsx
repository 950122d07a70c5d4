import type { Assessment } from '../../rules/assess.js';
import type { Verdict } from '../../rules/fit/fit.js';
import type { Severity } from '../../rules/flags/flag.js';

const SEVERITY_WORDS: Record<Severity, string> = {
  stop: 'Stop',
  limit: 'Over a limit',
  watch: 'Watch',
};

const VERDICT_WORDS: Record<Verdict, string> = {
  go: 'Go',
  'go-after': 'Go after',
  'weigh-first': 'Weigh it first',
  'no-go': 'No go',
  'cannot-say': 'Cannot say',
};

const READINESS_WORDS: Record<Assessment['readiness'], string> = {
  ready: 'Ready',
  due: 'Fix first',
  down: 'Down',
  gone: 'Gone',
};

/** Shape and word first; the colour only repeats them. */
export function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <span class={`mark mark-${severity}`}>
      {severity === 'stop' ? <Octagon /> : severity === 'limit' ? <Triangle /> : <Ring />}
      {SEVERITY_WORDS[severity]}
    </span>
  );
}

export function VerdictMark({ verdict, big }: { readonly verdict: Verdict; readonly big?: boolean }) {
  return (
    <span class={big ? `mark mark-big mark-${verdict}` : `mark mark-${verdict}`}>
      {verdict === 'go' && <Tick />}
      {verdict === 'go-after' && <Triangle />}
      {verdict === 'weigh-first' && <Ring />}
      {verdict === 'no-go' && <Octagon />}
      {verdict === 'cannot-say' && <Question />}
      {VERDICT_WORDS[verdict]}
    </span>
  );
}

export function ReadinessMark({ readiness }: { readonly readiness: Assessment['readiness'] | null }) {
  if (readiness === null) return <span class="mark mark-unknown">Not yet worked out</span>;
  return (
    <span class={`mark mark-${readiness}`}>
      {readiness === 'ready' && <Tick />}
      {readiness === 'due' && <Triangle />}
      {readiness === 'down' && <Octagon />}
      {READINESS_WORDS[readiness]}
    </span>
  );
}

export function readinessWord(readiness: Assessment['readiness']): string {
  return READINESS_WORDS[readiness];
}

function Octagon() {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      <path d="M5 .5h6L15.5 5v6L11 15.5H5L.5 11V5z" stroke="none" />
    </svg>
  );
}

function Triangle() {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      <path d="M8 1.5 15.5 14.5H.5z" stroke="none" />
    </svg>
  );
}

function Ring() {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      <circle cx="8" cy="8" r="5.5" fill="none" stroke-width="3" />
    </svg>
  );
}

function Tick() {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      <path d="M2 9l4 4 8-10" fill="none" stroke-width="3" />
    </svg>
  );
}

function Question() {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true">
      <path d="M5 5.5a3 3 0 1 1 4.5 2.600c-1 .6-1.5 1-1.5 2.200M8 13v.6" fill="none" stroke-width="2.2" />
    </svg>
  );
}
