interface WrittenProps {
  readonly name: string;
  readonly text: string;
}

/** A text to be marked and copied by hand where copying is not allowed; on paper in full. */
export function Written({ name, text }: WrittenProps) {
  return (
    <div className="field">
      <textarea
        className="not-printed"
        readOnly
        rows={3}
        aria-label={name}
        value={text}
        onFocus={(event) => event.target.select()}
      />
      <p className="only-printed">{text}</p>
    </div>
  );
}
