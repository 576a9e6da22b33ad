/** What a command needs of the world around it; tests hand in their own. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Contents of a file, or of standard input for `-`. */
  readonly read: (path: string) => Promise<Uint8Array>;
  /** Writes a whole file. One that is there already is refused, unless it may be replaced. */
  readonly write: (path: string, text: string, replace?: boolean) => Promise<void>;
  /** Whether a file of that name, or anything else, is there. */
  readonly isThere: (path: string) => Promise<boolean>;
  /** Changes a file that is there, as a whole and with nobody else changing it meanwhile. */
  readonly update: (path: string, change: (bytes: Uint8Array) => Uint8Array) => Promise<void>;
  /** The moment it is, milliseconds since 1970-01-01T00:00Z. */
  readonly now: () => number;
}
