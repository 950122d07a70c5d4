import type { ComponentChildren } from 'preact';
import { filterQuery, READINESS, type TrailerFilter } from '../form/trailer-filter.js';
import { CLASS_WORDS, optionsOf } from '../words/build-words.js';
import { Choice, Field } from './field.js';
import { PhoneFold } from './fold.js';
import { Island } from './island.js';
import { readinessWord } from './marks.js';

interface TrailerFilterFormProps {
  readonly filter: TrailerFilter;
  /** The page that is filtered. */
  readonly path: string;
  /** What else this page is asked by, as further fields. */
  readonly children?: ComponentChildren;
  /** Whether anything is asked beside the trailers, so that there is a way back to all. */
  readonly asked?: boolean;
}

/** Finds trailers by number, plate, class and readiness: a plain form, so every answer has an address. */
export function TrailerFilterForm({ filter, path, children, asked = false }: TrailerFilterFormProps) {
  const query = filterQuery(filter);
  const typed = { values: query, problems: [] };
  return (
    <search>
      <Island name="search-key" data={{}}>
        <form class="find sheet" method="get" action={path}>
          <Field typed={typed} name="text" label="Number, name, plate or VIN" type="search" maxLength={40} />
          <button class="button" type="submit">
            Show
          </button>
          <PhoneFold summary={narrowedBy(filter, children !== undefined)}>
            <div class="fields">
              <Choice typed={typed} name="class" label="Class" options={optionsOf(CLASS_WORDS)} none="Any" />
              <Choice
                typed={typed}
                name="readiness"
                label="Readiness"
                options={READINESS.map((value) => ({ value, label: readinessWord(value) }))}
                none="Any in service"
              />
              {children}
              <label class="pick key-wish">
                <input type="checkbox" data-search-key checked />
                <span>
                  <kbd>/</kbd> leads to the search
                </span>
              </label>
            </div>
          </PhoneFold>
          {(asked || Object.keys(query).length > 0) && <a href={path}>Show all</a>}
        </form>
      </Island>
    </search>
  );
}

/** What the folded part holds, and what of it is chosen. */
function narrowedBy({ trailerClass, readiness }: TrailerFilter, more: boolean): string {
  const chosen = [trailerClass && CLASS_WORDS[trailerClass], readiness && readinessWord(readiness)].filter(Boolean);
  if (chosen.length > 0) return `Only: ${chosen.join(', ')}`;
  return more ? 'Class, readiness, days' : 'Class and readiness';
}
