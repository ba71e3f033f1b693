interface SentencesProps {
  readonly sentences: readonly string[];
  readonly isRefused?: boolean;
}

/** What there is to be told, a line each. */
export function Sentences({ sentences, isRefused = false }: SentencesProps) {
  return (
    <div role={isRefused ? "alert" : "status"}>
      {sentences.length > 0 && (
        <ul class={isRefused ? "bring-in-told refused" : "bring-in-told"}>
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
