import { useEffect, useState } from 'react';
import { closeWords } from '../../language/close.ts';
import { hostClient } from '../../session/host.ts';
import './photo.css';

/** A kept picture as an address an image can show; null until it is here, 'gone' when it is not kept. */
export function useKeptPicture(sha256: string | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    let current = true;
    setAddress(null);
    if (sha256 === null) return;
    void hostClient()('picture.read', { sha256 }).then((read) => {
      if (!current) return;
      setAddress(read.ok ? `data:${read.value.mediaType};base64,${read.value.base64}` : 'gone');
    });
    return () => {
      current = false;
    };
  }, [sha256]);
  return address;
}

/** A photo of a find. */
export function KeptPhoto({ sha256, alt }: { readonly sha256: string; readonly alt: string }) {
  const address = useKeptPicture(sha256);
  if (address === 'gone') return <p className="quiet">{closeWords.photo.gone}</p>;
  return address === null ? (
    <span className="photo-waiting" />
  ) : (
    <img className="photo" src={address} alt={alt} />
  );
}
