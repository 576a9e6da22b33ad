/** What a command needs of the world around it; tests hand in their own. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Contents of a file, or of standard input for `-`. */
  readonly read: (path: string) => Promise<Uint8Array>;
}
