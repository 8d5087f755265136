/** A folder that is being served on 127.0.0.1. */
export interface Served {
  readonly url: string;
  readonly port: number;
  close(): Promise<void>;
}

export function serve(folder: string, port?: number): Promise<Served>;
