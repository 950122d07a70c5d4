import { hydrate } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { CivilDate } from '../../rules/calendar/civil-date.js';
import { type Metres, metres, toInch } from '../../rules/units/length.js';
import { FormReader } from '../form/read-form.js';
import { type AnsweredLoad, answerLoad, type Chosen, readAskedLoad } from '../load/asked-load.js';
import { LoadBench, standsWords } from '../load/load-bench.js';
import { startIsland } from './browser/start-island.js';

/** What the page hands to its script: the facts behind the answer. What was typed stands in the form. */
export interface LoadCheckData {
  readonly chosen: Chosen;
  readonly yardNumber: string;
  readonly today: CivilDate;
}

interface LoadCheckProps {
  readonly data: LoadCheckData;
  readonly form: HTMLFormElement;
  /** What it stands in. */
  readonly place: HTMLElement;
}

/** The form stays the truth: dragging writes into it, and what is typed there answers at once. */
function LoadCheck({ data, form, place }: LoadCheckProps) {
  const [asked, setAsked] = useState(() => readForm(form, data));
  const last = useRef<AnsweredLoad | null>(null);
  const answered = useMemo(
    () => (asked.problems.length > 0 ? null : answerLoad(data.chosen, asked, data.today)),
    [asked],
  );
  // While a number is half typed, the answer before it stays.
  if (answered !== null) last.current = answered;
  const shown = last.current;
  const isAwake = useAwake();

  useEffect(() => {
    const read = () => setAsked(readForm(form, data));
    form.addEventListener('input', read);
    return () => form.removeEventListener('input', read);
  }, []);
  const put = (placeM: number) => {
    if (shown === null) return;
    writePlace(form, shown, placeM);
    setAsked(readForm(form, data));
  };
  useDrag(place, shown, put);

  if (shown === null) return null;
  const slider = isAwake && shown.placeM !== null && <Slider answered={shown} put={put} />;
  return <LoadBench yardNumber={data.yardNumber} answered={shown} today={data.today} slider={slider || undefined} />;
}

function readForm(form: HTMLFormElement, { chosen }: LoadCheckData) {
  return readAskedLoad(new FormReader(Object.fromEntries(new FormData(form))), chosen.machine);
}

/** False while the page is taken over, when what is drawn must equal what came from the server; then true. */
function useAwake(): boolean {
  const [isAwake, wake] = useState(false);
  useEffect(() => wake(true), []);
  return isAwake;
}

const TENTH_INCH_M = 0.00254;

/** Puts a place into the form: as it stands, or with a ticket as how far it was moved since. */
function writePlace(form: HTMLFormElement, { asked, placeM, range }: AnsweredLoad, toM: number): void {
  const heldM = range === null ? toM : Math.min(Math.max(toM, range.fromM), range.toM);
  const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement;
  const inches = (length: number) => (Math.round(length / TENTH_INCH_M) / 10).toString();
  if (asked.scale === null) field('at').value = inches(heldM);
  else field('moved').value = inches((asked.movedForwardM ?? 0) + (placeM ?? heldM) - heldM);
}

/** The machine of the picture follows the finger, by as much as the picture is scaled. */
function useDrag(place: HTMLElement, shown: AnsweredLoad | null, put: (placeM: number) => void) {
  const now = useRef({ shown, put });
  now.current = { shown, put };
  useEffect(() => {
    let grip: { readonly offM: number; readonly pointer: number } | null = null;
    let frame = 0;
    const metresAt = (event: PointerEvent): number | null => {
      const drawing = place.querySelector<SVGSVGElement>('[data-cargo]')?.ownerSVGElement;
      const scale = drawing?.getScreenCTM();
      return scale ? (event.clientX - scale.e) / scale.a / 100 : null;
    };
    const down = (event: PointerEvent) => {
      const under = event.target as Element;
      const at = metresAt(event);
      const stands = now.current.shown?.placeM ?? null;
      if (under.closest('[data-cargo]') === null || at === null || stands === null) return;
      grip = { offM: stands - at, pointer: event.pointerId };
      place.setPointerCapture(event.pointerId);
      event.preventDefault();
    };
    const move = (event: PointerEvent) => {
      const at = metresAt(event);
      if (grip === null || event.pointerId !== grip.pointer || at === null) return;
      const toM = at + grip.offM;
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => now.current.put(toM));
    };
    const up = () => {
      grip = null;
    };
    place.addEventListener('pointerdown', down);
    place.addEventListener('pointermove', move);
    place.addEventListener('pointerup', up);
    place.addEventListener('pointercancel', up);
  }, []);
}

interface SliderProps {
  readonly answered: AnsweredLoad;
  readonly put: (placeM: number) => void;
}

/** The same for keys, gloves and screen readers: arrows move by an inch, Page Up and Down by a foot. */
function Slider({ answered, put }: SliderProps) {
  const { answer, range } = answered;
  const placeM = answered.placeM as Metres;
  const [fromM, toM] = range === null ? [metres(placeM - 2), metres(placeM + 2)] : [range.fromM, range.toM];
  const bestM = answer.parking?.balancePointM ?? null;
  const INCH_M = 0.0254;
  const line = useRef<HTMLInputElement>(null);
  useUnderPicture(line, fromM, toM);
  return (
    <>
      <label class="hidden-words" for="bench-place">
        Where {answered.asked.name} balances on the deck
      </label>
      <input
        ref={line}
        id="bench-place"
        class="bench-range"
        type="range"
        min={Math.ceil(toInch(fromM))}
        max={Math.floor(toInch(toM))}
        step="1"
        value={Math.round(toInch(placeM))}
        aria-valuetext={spokenWords(answered, placeM)}
        onInput={(event) => put(Number(event.currentTarget.value) * INCH_M)}
        onKeyDown={(event) => {
          const by = event.key === 'PageUp' ? 12 : event.key === 'PageDown' ? -12 : 0;
          if (by === 0) return;
          event.preventDefault();
          put(placeM + by * INCH_M);
        }}
      />
      <div class="row">
        <button class="button" type="button" onClick={() => put(placeM - INCH_M)}>
          <span aria-hidden="true">◀</span> 1 in forward
        </button>
        <button class="button" type="button" onClick={() => put(placeM + INCH_M)}>
          1 in back <span aria-hidden="true">▶</span>
        </button>
        {bestM !== null && answered.asked.scale === null && (
          <button class="button button-main" type="button" onClick={() => put(bestM)}>
            Best place
          </button>
        )}
        <p class="small soft">{standsWords(answered, placeM)}</p>
      </div>
    </>
  );
}

/** Half a slider's knob: its middle travels that much less than its line is long. */
const KNOB_PX = 8;

/** Lays the slider under the stretch of deck it stands for, so that its knob is right below the balance point. */
function useUnderPicture(line: { readonly current: HTMLInputElement | null }, fromM: number, toM: number) {
  useEffect(() => {
    const lay = () => {
      const scale = document.querySelector<SVGSVGElement>('[data-cargo]')?.ownerSVGElement?.getScreenCTM();
      const frame = line.current?.parentElement?.getBoundingClientRect();
      if (!scale || frame === undefined || line.current === null) return;
      const across = (placeM: number) => scale.e + placeM * 100 * scale.a - frame.left;
      line.current.style.marginInlineStart = `${across(fromM) - KNOB_PX}px`;
      line.current.style.inlineSize = `${across(toM) - across(fromM) + 2 * KNOB_PX}px`;
    };
    lay();
    addEventListener('resize', lay);
    return () => removeEventListener('resize', lay);
  }, [fromM, toM]);
}

/** What a screen reader says at each step: the place, the tongue, and the answer. */
function spokenWords(answered: AnsweredLoad, placeM: Metres): string {
  const share = answered.answer.loadCheck.tongueShare;
  const tongue = share === null ? '' : ` ${(share * 100).toFixed(1)} % on the tongue.`;
  return `${standsWords(answered, placeM)}${tongue} ${VERDICTS[answered.answer.verdict]}`;
}

const VERDICTS = {
  go: 'Go.',
  'go-after': 'Go after.',
  'weigh-first': 'Weigh it first.',
  'no-go': 'No go.',
  'cannot-say': 'Cannot say.',
};

startIsland<LoadCheckData>('load-check', (place, data) => {
  const form = document.querySelector<HTMLFormElement>('form[data-load-check]');
  if (form !== null) hydrate(<LoadCheck data={data} form={form} place={place} />, place);
});
