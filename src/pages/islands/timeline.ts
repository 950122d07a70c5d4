import type { TimelineData } from '../timeline/timeline.view.js';
import { startIsland } from './browser/start-island.js';

interface Answer {
  readonly verdict: string;
  readonly says: string;
}

/** Further than this the pointer drags; nearer it clicks. */
const DRAG_PX = 6;

/** Holds a job over a row until it is let go or given to it. */
class Mover {
  private readonly told: string;
  private readonly answers = new Map<string, Promise<Answer>>();
  /** The job picked up, and the row it is held over. */
  private job: HTMLElement | null = null;
  private row: HTMLElement | null = null;
  private from: { readonly link: HTMLElement; readonly x: number; readonly y: number } | null = null;
  private dragged = false;

  constructor(
    private readonly place: HTMLElement,
    private readonly answer: HTMLElement,
    private readonly back: string,
  ) {
    this.told = answer.textContent;
  }

  start(): void {
    this.place.addEventListener('keydown', (event) => this.onKey(event));
    this.place.addEventListener('focusout', () => this.job && !this.dragged && this.letGo());
    this.place.addEventListener('pointerdown', (event) => this.onDown(event));
    document.addEventListener('pointermove', (event) => this.onMove(event));
    document.addEventListener('pointerup', () => this.onUp());
    document.addEventListener('pointercancel', () => this.letGo());
    // After a drag the browser clicks what was dragged, which would open the job.
    this.place.addEventListener('click', (event) => this.dragged && event.preventDefault(), { capture: true });
    this.place.addEventListener('dragstart', (event) => event.preventDefault());
    this.place.classList.add('awake');
  }

  private onKey(event: KeyboardEvent): void {
    const link = (event.target as HTMLElement).closest<HTMLElement>('[data-job]');
    if (link === null) return;
    if (this.job === null) {
      if (event.key === ' ') this.pickUp(link);
      else return;
    } else if (event.key === 'Escape' || event.key === ' ') this.letGo();
    else if (event.key === 'ArrowDown') this.step(1);
    else if (event.key === 'ArrowUp') this.step(-1);
    else if (event.key === 'Enter') this.drop();
    else return;
    event.preventDefault();
  }

  /** Fingers scroll the days; they move a job by the page behind it. */
  private onDown(event: PointerEvent): void {
    const link = (event.target as HTMLElement).closest<HTMLElement>('[data-job]');
    this.dragged = false;
    if (link === null || event.button !== 0 || event.pointerType === 'touch') return;
    this.from = { link, x: event.clientX, y: event.clientY };
  }

  private onMove(event: PointerEvent): void {
    if (this.from === null) return;
    if (this.job === null) {
      if (Math.hypot(event.clientX - this.from.x, event.clientY - this.from.y) < DRAG_PX) return;
      this.dragged = true;
      this.pickUp(this.from.link);
    }
    const under = document.elementFromPoint(event.clientX, event.clientY);
    this.holdOver(under?.closest<HTMLElement>('[data-trailer]') ?? null);
  }

  private onUp(): void {
    const dragging = this.from !== null && this.job !== null;
    this.from = null;
    if (dragging) this.drop();
  }

  private pickUp(link: HTMLElement): void {
    this.job = link;
    link.classList.add('lane-picked');
    this.place.classList.add('lane-moving');
    this.say(`${nameOf(link)} is picked up. Go to the row of another trailer.`);
  }

  private step(by: number): void {
    const rows = [...this.place.querySelectorAll<HTMLElement>('[data-trailer]')];
    const at = rows.indexOf(this.row ?? this.home() ?? (rows[0] as HTMLElement));
    // A job without a trailer stands above all rows: the first step leads into the first of them.
    const next = this.row === null && this.home() === null ? 0 : at + by;
    this.holdOver(rows[Math.min(rows.length - 1, Math.max(0, next))] ?? null);
    this.row?.scrollIntoView({ block: 'nearest' });
  }

  private holdOver(row: HTMLElement | null): void {
    if (row === this.row || this.job === null) return;
    this.row?.classList.remove('lane-over-row');
    this.row = row;
    if (row === null) return;
    row.classList.add('lane-over-row');
    if (row === this.home()) this.say(`${row.dataset.number}: it has this job now.`);
    else void this.ask(this.job, row);
  }

  private async ask(job: HTMLElement, row: HTMLElement): Promise<void> {
    this.say(`${row.dataset.number}: asking …`);
    const address = `/jobs/${job.dataset.job}/move/${row.dataset.trailer}/answer`;
    const asked = this.answers.get(address) ?? fetchAnswer(address);
    this.answers.set(address, asked);
    const answer = await asked.catch(() => null);
    if (answer === null) this.answers.delete(address);
    // Meanwhile it may be held over another row.
    if (this.row !== row) return;
    this.say(
      answer === null
        ? `${row.dataset.number}: no answer came. It is asked again before the job is moved.`
        : `${row.dataset.number}: ${answer.says}`,
      answer?.verdict,
    );
  }

  private drop(): void {
    const { job, row } = this;
    const home = this.home();
    if (job === null || row === null || row === home) {
      this.letGo();
      return;
    }
    const form = document.createElement('form');
    form.method = 'post';
    form.action = `/jobs/${job.dataset.job}/move/${row.dataset.trailer}`;
    const back = document.createElement('input');
    back.type = 'hidden';
    back.name = 'back';
    back.value = this.back;
    form.append(back);
    this.place.append(form);
    form.submit();
  }

  private letGo(): void {
    this.from = null;
    this.job?.classList.remove('lane-picked');
    this.row?.classList.remove('lane-over-row');
    this.place.classList.remove('lane-moving');
    this.job = null;
    this.row = null;
    this.say(this.told);
  }

  private home(): HTMLElement | null {
    return this.job?.closest<HTMLElement>('[data-trailer]') ?? null;
  }

  private say(words: string, verdict = 'none'): void {
    this.answer.dataset.verdict = verdict;
    this.answer.textContent = words;
  }
}

function nameOf(job: HTMLElement): string {
  return job.firstChild?.textContent ?? 'The job';
}

async function fetchAnswer(address: string): Promise<Answer> {
  const response = await fetch(address, { headers: { accept: 'application/json' } });
  if (!response.ok) throw new Error(`${address} answered ${response.status}`);
  return (await response.json()) as Answer;
}

/** Moves jobs between the rows of the time line, by pointer or by keys; the other trailer answers before it gets one. */
startIsland<TimelineData>('timeline', (place, { back }) => {
  const answer = place.querySelector<HTMLElement>('[data-lane-answer]');
  if (answer !== null) new Mover(place, answer, back).start();
});
