interface SentencesProps {
  readonly sentences: readonly string[];
  readonly isRefused?: boolean;
}

/** What there is to be told, a line each. */
export function Sentences({ sentences, isRefused = false }: SentencesProps) {
  if (sentences.length === 0) return null;
  return (
    <ul class={isRefused ? "bring-in-told refused" : "bring-in-told"} role={isRefused ? "alert" : "status"}>
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
