declare const brand: unique symbol;

/** A `T` that only one function may make: the compiler keeps it apart from every other `T`. */
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };
