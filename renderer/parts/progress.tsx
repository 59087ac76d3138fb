/** Work that takes time: how far it is (0 to 1) or, when unknown, only that it goes on. */
export function Progress({ label, share }: { readonly label: string; readonly share?: number }) {
  return (
    <div className="progress" role="status">
      <span>{label}</span>
      <progress aria-label={label} max={1} value={share} />
    </div>
  );
}
