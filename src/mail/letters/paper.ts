/** A letter before it is set: what it says, in order, for the text and the HTML alike. */
export interface Paper {
  readonly yardName: string;
  readonly subject: string;
  /** The first line a phone shows beside the subject. */
  readonly preview: string;
  readonly greeting: string;
  readonly opening: readonly string[];
  /** Everything in one line each, where a letter has too much to be read standing. */
  readonly summary: readonly string[];
  readonly sections: readonly Section[];
  /** The one thing to open, where a letter has one. */
  readonly button: Link | null;
  /** Cautions and why this letter came, small at the end. */
  readonly closing: readonly string[];
}

export interface Section {
  readonly heading: string;
  readonly entries: readonly Entry[];
}

/** One thing told: about one trailer, as a rule. */
export interface Entry {
  readonly tone: Tone;
  readonly title: string;
  /** The verdict in a few words, shown as a mark; null where there is none. */
  readonly mark: string | null;
  readonly says: readonly string[];
  readonly todo: readonly string[];
  readonly facts: readonly Fact[];
  readonly link: Link | null;
}

/** `stop`: do not load. `first`: something comes first. `plain`: nothing to worry about. */
export type Tone = 'stop' | 'first' | 'plain';

export interface Fact {
  readonly label: string;
  readonly text: string;
}

interface Link {
  readonly text: string;
  readonly url: string;
}

/** A letter as it goes out. */
export interface Written {
  readonly subject: string;
  readonly text: string;
  readonly html: string;
}
