interface PicturesProps {
  readonly ids: readonly string[];
  /** What they show. */
  readonly of: string;
}

/** Photos in a row, each leading to itself in full size. */
export function Pictures({ ids, of }: PicturesProps) {
  if (ids.length === 0) return <p class="no-picture">No photo</p>;
  return (
    <ul class="photos">
      {ids.map((id, place) => (
        <li key={id}>
          <a href={`/photos/${id}`}>
            <img
              src={`/photos/${id}`}
              alt={ids.length === 1 ? of : `${of}, ${place + 1} of ${ids.length}`}
              loading="lazy"
              width={160}
              height={120}
            />
          </a>
        </li>
      ))}
    </ul>
  );
}
