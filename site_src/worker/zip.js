// Reads a zip without unpacking: `calc` comes stored, because it was compressed on the way.

/** The files of a stored (not deflated) zip, by its central directory: [name, content] pairs. @param {Uint8Array} zip */
export function* zipEntries(zip) {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const end = zip.byteLength - 22; // no comment: the end record is the last thing
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    const size = view.getUint32(at + 24, true);
    const nameLength = view.getUint16(at + 28, true);
    const local = view.getUint32(at + 42, true);
    const data = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    yield [new TextDecoder().decode(zip.subarray(at + 46, at + 46 + nameLength)), zip.subarray(data, data + size)];
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
}
