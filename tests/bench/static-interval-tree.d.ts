declare module "static-interval-tree" {
  interface StartEnd {
    readonly start: number;
    readonly end: number;
  }
  interface Tree<T> {
    readonly el: T;
  }
  const tree: {
    index<T extends StartEnd>(intervals: readonly T[]): Tree<T> | undefined;
    /** Half-open. */
    matches01<T extends StartEnd>(tree: Tree<T> | undefined, position: StartEnd): T[];
  };
  export default tree;
}
