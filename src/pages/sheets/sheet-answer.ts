/** Carries whose page it is; only pages with it are kept on a phone. */
export const PERSON_HEADER = 'axlebook-person';

/** Something that changed while a sheet was on its way, and where to look at it. */
export interface ChangedSaid {
  readonly text: string;
  readonly path: string;
}

/** What the service answers a phone that sends a sheet. */
export type SheetAnswer =
  | {
      readonly kind: 'recorded';
      /** The id the phone sent it under: nobody else's answer is taken for ours. */
      readonly sendId: string;
      readonly record: string;
      readonly held: boolean;
      readonly sentAgain: boolean;
      readonly changed: readonly ChangedSaid[];
    }
  | {
      readonly kind: 'refused';
      /** Something was recorded under this send id that said otherwise: sent again, it needs an id of its own. */
      readonly recordedBefore: boolean;
      readonly problems: readonly { readonly field: string; readonly message: string }[];
    }
  /** Somebody else signed it than is signed in. */
  | { readonly kind: 'other-person' };
