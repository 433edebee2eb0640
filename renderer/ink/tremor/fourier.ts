/**
 * Discrete Fourier transform in place, radix 2 (Cooley & Tukey 1965); tests compare it with the plain sum.
 * @param re real parts, a power of two of them
 * @param im imaginary parts, as many
 */
export function transform(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i += 1) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j]!, re[i]!];
      [im[i], im[j]] = [im[j]!, im[i]!];
    }
  }
  for (let size = 2; size <= n; size *= 2) {
    const half = size / 2;
    for (let k = 0; k < half; k += 1) {
      const angle = (-2 * Math.PI * k) / size;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      for (let start = k; start < n; start += size) {
        const other = start + half;
        const r = re[other]! * cos - im[other]! * sin;
        const i = re[other]! * sin + im[other]! * cos;
        re[other] = re[start]! - r;
        im[other] = im[start]! - i;
        re[start] = re[start]! + r;
        im[start] = im[start]! + i;
      }
    }
  }
}
