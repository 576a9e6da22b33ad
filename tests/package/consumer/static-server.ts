import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join } from "node:path";

const TYPES: Readonly<Partial<Record<string, string>>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".csv": "text/csv",
};

/** Serves a folder on this machine alone, because a browser runs no module from a file. */
export async function serve(
  folder: string,
): Promise<{ readonly origin: string; readonly close: () => void }> {
  const server = createServer(({ url = "/" }, response) => {
    const { pathname } = new URL(url, "http://localhost");
    const path = pathname === "/" ? "/index.html" : pathname;
    try {
      const body = readFileSync(join(folder, path));
      response.writeHead(200, { "content-type": TYPES[extname(path)] ?? "application/octet-stream" });
      response.end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the server has no port");
  return { origin: `http://127.0.0.1:${address.port}`, close: () => server.close() };
}
