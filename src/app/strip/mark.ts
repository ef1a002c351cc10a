// The mark of this device: two phones without signal must never call two things by one name.

const LENGTH = 4;

export function freshMark(): string {
  const bytes = window.crypto.getRandomValues(new Uint8Array(LENGTH));
  return [...bytes].map((byte) => (byte % 36).toString(36)).join('');
}
