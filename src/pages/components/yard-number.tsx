/** A trailer's number, as painted on it; a link to its page unless told otherwise. */
export function YardNumber({ number, id }: { readonly number: string; readonly id?: string | undefined }) {
  if (id === undefined) return <span class="plate-no">{number}</span>;
  return (
    <a class="plate-no" href={`/trailers/${id}`}>
      {number}
    </a>
  );
}
