type Bare = string | number | boolean | null | undefined | Uint8Array;

type Lenient<T> = null extends T ? true : T extends Bare ? false : true;

/**
 * A fact as a door hands it in: whatever may be unknown, and every group or list, may also be left out.
 * What must be given stays required.
 */
export type Incoming<T> = T extends Bare
  ? T
  : T extends readonly (infer Entry)[]
    ? readonly Incoming<Entry>[]
    : { readonly [K in keyof T as Lenient<T[K]> extends true ? never : K]: Incoming<T[K]> } & {
        readonly [K in keyof T as Lenient<T[K]> extends true ? K : never]?: Incoming<T[K]>;
      };
