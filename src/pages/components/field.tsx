import type { ComponentChildren } from 'preact';
import type { FieldProblem } from '../../use-cases/outcome.js';
import { fieldName } from '../form/field-name.js';

/** What was typed and what is wrong with it, as a form is shown again. Both empty on a fresh form. */
export interface Typed {
  readonly values: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly problems: readonly FieldProblem[];
}

export const NOTHING_TYPED: Typed = { values: {}, problems: [] };

export function typedText(typed: Typed, name: string): string {
  const value = typed.values[name];
  return typeof value === 'string' ? value : (value?.[0] ?? '');
}

function typedList(typed: Typed, name: string): readonly string[] {
  const value = typed.values[name];
  if (value === undefined) return [];
  return typeof value === 'string' ? [value] : value;
}

function problemOf(typed: Typed, name: string): string | null {
  return typed.problems.find((problem) => fieldName(problem.field) === name)?.message ?? null;
}

const idOf = (name: string) => `f-${name.replace(/[^\w-]/g, '-')}`;

/** Carries the id of a fresh form along, so that a button pressed twice records once. */
export function SendId({ typed }: { readonly typed: Typed }) {
  return <input type="hidden" name="sendId" value={typedText(typed, 'sendId')} />;
}

interface FieldProps {
  readonly typed: Typed;
  readonly name: string;
  readonly label: string;
  readonly unit?: string;
  readonly hint?: ComponentChildren;
  readonly type?: 'text' | 'email' | 'password' | 'date' | 'search' | 'file' | 'number' | 'url';
  readonly inputMode?: 'decimal' | 'numeric' | 'text' | 'email';
  readonly autoComplete?: string;
  readonly required?: boolean;
  readonly wide?: boolean;
  readonly lines?: number;
  readonly list?: readonly string[];
  readonly accept?: string;
  readonly multiple?: boolean;
  readonly minLength?: number;
  readonly maxLength?: number;
}

/** One line to fill in: label, unit, hint, what is wrong, and the line itself, tied together for every reader. */
export function Field(props: FieldProps) {
  const { typed, name, label, unit, hint, type = 'text', wide, lines, list } = props;
  const id = idOf(name);
  const wrong = problemOf(typed, name);
  const described = [hint ? `${id}-hint` : null, wrong ? `${id}-wrong` : null]
    .filter((part) => part !== null)
    .join(' ');
  const shared = {
    id,
    name,
    class: 'input',
    required: props.required,
    'aria-invalid': wrong ? ('true' as const) : undefined,
    'aria-describedby': described === '' ? undefined : described,
    maxLength: props.maxLength ?? (type === 'file' ? undefined : 2000),
  };
  return (
    <div class={wide ? 'field wide' : type === 'date' ? 'field field-day' : 'field'}>
      <label for={id}>
        {label}
        {unit && <span class="unit"> ({unit})</span>}
        {props.required && <span class="unit"> · needed</span>}
      </label>
      {hint && (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {wrong && (
        <span class="wrong" id={`${id}-wrong`}>
          {wrong}
        </span>
      )}
      {lines ? (
        <textarea {...shared} rows={lines}>
          {typedText(typed, name)}
        </textarea>
      ) : (
        <input
          {...shared}
          // The library's types want each input type on its own; any of ours goes with these attributes.
          type={type as 'text'}
          value={type === 'password' || type === 'file' ? undefined : typedText(typed, name)}
          inputMode={props.inputMode ?? (unit ? 'decimal' : undefined)}
          autoComplete={props.autoComplete ?? 'off'}
          list={list ? `${id}-list` : undefined}
          accept={props.accept}
          multiple={props.multiple}
          minLength={props.minLength}
        />
      )}
      {list && (
        <datalist id={`${id}-list`}>
          {list.map((option) => (
            <option key={option} value={option} />
          ))}
        </datalist>
      )}
    </div>
  );
}

export interface Option {
  readonly value: string;
  readonly label: string;
}

interface ChoiceProps {
  readonly typed: Typed;
  readonly name: string;
  readonly label: string;
  readonly options: readonly Option[];
  /** The first line, for "nobody has said"; null when a choice must be made. */
  readonly none?: string | null;
  readonly hint?: ComponentChildren;
  readonly required?: boolean;
  readonly wide?: boolean;
}

export function Choice({ typed, name, label, options, none = 'Unknown', hint, required, wide }: ChoiceProps) {
  const id = idOf(name);
  const wrong = problemOf(typed, name);
  const chosen = typedText(typed, name);
  const described = [hint ? `${id}-hint` : null, wrong ? `${id}-wrong` : null]
    .filter((part) => part !== null)
    .join(' ');
  return (
    <div class={wide ? 'field wide' : 'field'}>
      <label for={id}>
        {label}
        {required && <span class="unit"> · needed</span>}
      </label>
      {hint && (
        <span class="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {wrong && (
        <span class="wrong" id={`${id}-wrong`}>
          {wrong}
        </span>
      )}
      <select
        id={id}
        name={name}
        required={required}
        class="input"
        aria-invalid={wrong ? 'true' : undefined}
        aria-describedby={described === '' ? undefined : described}
      >
        {none !== null && (
          <option value="" selected={chosen === ''}>
            {none}
          </option>
        )}
        {options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === chosen}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}

interface PicksProps {
  readonly typed: Typed;
  readonly name: string;
  readonly label: string;
  readonly options: readonly Option[];
  readonly kind: 'radio' | 'checkbox';
  readonly hint?: ComponentChildren;
  readonly wide?: boolean;
}

/** A few answers to tap, one (`radio`) or several (`checkbox`). */
export function Picks({ typed, name, label, options, kind, hint, wide = true }: PicksProps) {
  const id = idOf(name);
  const wrong = problemOf(typed, name);
  const chosen = typedList(typed, name);
  return (
    <fieldset class={wide ? 'field wide' : 'field'} id={id} aria-describedby={wrong ? `${id}-wrong` : undefined}>
      <legend class="label">{label}</legend>
      {hint && <span class="hint">{hint}</span>}
      {wrong && (
        <span class="wrong" id={`${id}-wrong`}>
          {wrong}
        </span>
      )}
      <div class="picks">
        {options.map((option) => (
          <label class="pick" key={option.value}>
            <input
              type={kind}
              name={name}
              value={option.value}
              checked={
                chosen.includes(option.value) || (kind === 'radio' && chosen.length === 0 && option.value === '')
              }
            />
            {option.label}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** Yes, no, or nobody has said. */
export function YesNo(props: Omit<PicksProps, 'options' | 'kind'>) {
  return (
    <Picks
      {...props}
      kind="radio"
      options={[
        { value: '', label: 'Unknown' },
        { value: 'yes', label: 'Yes' },
        { value: 'no', label: 'No' },
      ]}
    />
  );
}

/** A titled group of fields. */
export function Section({ title, lede, children }: SectionProps) {
  return (
    <fieldset class="section">
      <legend>{title}</legend>
      <div class="stack">
        {lede && <p class="soft small">{lede}</p>}
        {children}
      </div>
    </fieldset>
  );
}

interface SectionProps {
  readonly title: ComponentChildren;
  readonly lede?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** All that is wrong, at the top of the form, each line leading to its field. */
export function WrongList({ typed }: { readonly typed: Typed }) {
  if (typed.problems.length === 0) return null;
  return (
    <div class="wrong-list" role="alert" tabindex={-1}>
      <p class="strong">Nothing was saved yet. Mend this and send it again:</p>
      <ul>
        {typed.problems.map(({ field, message }) => (
          <li key={field + message}>
            <a href={`#${idOf(fieldName(field))}`}>{message}</a>
          </li>
        ))}
      </ul>
    </div>
  );
}
