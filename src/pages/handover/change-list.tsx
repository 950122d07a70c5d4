import type { Change } from '../../rules/handover/changes.js';
import { ANSWER_WORDS, changeWords, seenWords, thingWords } from '../words/handover-words.js';
import { Pictures } from './pictures.js';

const ORDER = ['chargeable', 'inspect', 'wear'] as const;

/** What changed while it was out, the way out and the return side by side, what can be charged first. */
export function ChangeList({ changes }: { readonly changes: readonly Change[] }) {
  if (changes.length === 0) return <p class="empty">Nothing changed while it was out.</p>;
  return (
    <>
      {ORDER.map((answer) => {
        const found = changes.filter((change) => change.answer === answer);
        if (found.length === 0) return null;
        const { name, says } = ANSWER_WORDS[answer];
        return (
          <section class="stack-tight" key={answer} aria-labelledby={`answer-${answer}`}>
            <h3 id={`answer-${answer}`}>
              {name} <span class="count">{found.length}</span>
            </h3>
            <p class="soft small">{says}</p>
            <ul class="plain stack">
              {found.map((change) => (
                <ChangeCard key={`${change.thing} ${change.position}`} change={change} />
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}

function ChangeCard({ change }: { readonly change: Change }) {
  const { was, is } = change;
  const name = thingWords(is);
  return (
    <li class={`sheet change change-${change.answer}`}>
      <p>
        <strong>{name}:</strong> {changeWords(change)}
        {change.keepsIn && <span class="keeps-in"> Keeps it in.</span>}
      </p>
      <div class="beside">
        <figure>
          <figcaption>Out: {was === null ? 'not looked at' : seenWords(was)}</figcaption>
          {was !== null && <Pictures ids={was.photoIds} of={`${name}, as it went out`} />}
        </figure>
        <figure>
          <figcaption>Back: {seenWords(is)}</figcaption>
          <Pictures ids={is.photoIds} of={`${name}, as it came back`} />
        </figure>
      </div>
    </li>
  );
}
