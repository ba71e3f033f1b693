/** What is brought in: a file, or corners that are pasted. */
export type Brought =
  | { readonly kind: "file"; readonly file: Blob & { readonly name: string } }
  | { readonly kind: "corners" };
