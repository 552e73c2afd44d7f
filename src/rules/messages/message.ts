/** A sentence for a person, with `{blanks}`; and what to do about it. */
export interface Message {
  readonly message: string;
  /** The code that this is another sentence for; the entry's own key is no code then. */
  readonly of?: string;
  readonly remedy?: string;
}

/** Sentences by code. */
export type Messages = Readonly<Record<string, Message>>;
