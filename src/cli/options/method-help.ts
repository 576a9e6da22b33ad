/** The lines of a help text that explain `--method`, for a command that takes these methods. */
export function methodHelp(methods: readonly string[]): string {
  const lines = [methods.slice(0, 3), methods.slice(3, 5), methods.slice(5, 7), methods.slice(7)]
    .filter((line) => line.length > 0)
    .map((line) => line.join(", "));
  return `  --method NAME         how the temperature runs within a day (default
                        single-sine): ${lines.join(`,\n${" ".repeat(24)}`)}`;
}
