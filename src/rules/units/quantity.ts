declare const unit: unique symbol;

/**
 * A number that carries its unit in its type, so that a mass cannot be passed where a force is meant.
 * The unit exists only for the compiler; at run time it is a plain number, ready for JSON.
 */
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit };
