// What the model of a page asks of its thousand letters in each round, two at a time (128-bit SIMD).
// topSums gives bit for bit what the function of that name in lines/page-model.ts gives (a test compares them): exp is
// that of fdlibm (Sun Microsystems, 1993), step by step, for that is what the JavaScript engine gives.

const LN2_HIGH: f64 = 6.93147180369123816490e-1;
const LN2_LOW: f64 = 1.90821492927058770002e-10;

// e^x of two numbers from -700 to 0.
// @ts-ignore: decorator
@inline
function exp2(given: v128): v128 {
  const k = i32x4.trunc_sat_f64x2_s_zero(
    f64x2.sub(f64x2.splat(0.5), f64x2.mul(given, f64x2.splat(1.44269504088896338700))),
  );
  const steps = f64x2.convert_low_i32x4_s(k);
  const high = f64x2.add(given, f64x2.mul(steps, f64x2.splat(LN2_HIGH)));
  const low = f64x2.neg(f64x2.mul(steps, f64x2.splat(LN2_LOW)));
  const x = f64x2.sub(high, low);
  const t = f64x2.mul(x, x);
  let p = f64x2.add(f64x2.splat(-1.65339022054652515390e-6), f64x2.mul(t, f64x2.splat(4.13813679705723846039e-8)));
  p = f64x2.add(f64x2.splat(6.61375632143793436117e-5), f64x2.mul(t, p));
  p = f64x2.add(f64x2.splat(-2.77777777770155933842e-3), f64x2.mul(t, p));
  p = f64x2.add(f64x2.splat(1.66666666666666019037e-1), f64x2.mul(t, p));
  const c = f64x2.sub(x, f64x2.mul(t, p));
  const quotient = f64x2.div(f64x2.mul(x, c), f64x2.sub(f64x2.splat(2), c));
  const y = f64x2.sub(f64x2.splat(1), f64x2.sub(f64x2.sub(low, quotient), high));
  // Times 2^-k, by its exponent.
  const power = i64x2.shl(i64x2.sub(i64x2.splat(1023), i64x2.extend_low_i32x4_s(k)), 52);
  return f64x2.mul(y, power);
}

// e^(-z^2 / 2), z = (x - mean) / sd.
// @ts-ignore: decorator
@inline
function bell(off: v128, sd: f64): v128 {
  const z = f64x2.div(off, f64x2.splat(sd));
  return exp2(f64x2.max(f64x2.splat(-700), f64x2.mul(f64x2.splat(-0.5), f64x2.mul(z, z))));
}

// The numbers of a page's model, 64-bit floats in this order.
@unmanaged
class TopModel {
  level: f64;
  elsewhere: f64;
  smallShare: f64;
  smallSpread: f64;
  smallWidth: f64;
  tallShare: f64;
  tallStep: f64;
  tallSpread: f64;
  tallWidth: f64;
  joinShare: f64;
  joinStep: f64;
  joinSpread: f64;
  joinWidth: f64;
}

/**
 * What a round of the page's model sums over `count` tops, every second one by itself: `sums` has room for eight pairs
 * of numbers, `own` for two numbers a line, `products` for a pair each 16 tops. `ys`, `lines` and `joined` (1 or 0) have room for an
 * even number.
 */
export function topSums(
  ys: usize, lines: usize, count: i32, joined: usize, offsets: usize, own: usize, sums: usize, products: usize, at: usize,
): void {
  const model = changetype<TopModel>(at);
  const one = f64x2.splat(1);
  const level = f64x2.splat(model.level);
  const elsewhere = f64x2.splat(model.elsewhere);
  const joinStep = f64x2.splat(model.joinStep);
  const tallStep = f64x2.splat(model.tallStep);
  let small = f64x2.splat(0);
  let tall = f64x2.splat(0);
  let join = f64x2.splat(0);
  let other = f64x2.splat(0);
  let mean = f64x2.splat(0);
  let square = f64x2.splat(0);
  let high = f64x2.splat(0);
  let highSquare = f64x2.splat(0);
  let product = one;
  for (let i = 0; i < count; i += 2) {
    const y = v128.load(ys + (<usize>i << 3));
    const first = <usize>load<i32>(lines + (<usize>i << 2));
    const second = <usize>load<i32>(lines + (<usize>i << 2), 4);
    const offset = f64x2.replace_lane(f64x2.splat(load<f64>(offsets + (first << 3))), 1, load<f64>(offsets + (second << 3)));
    const above = f64x2.sub(y, level);
    const off = f64x2.sub(above, offset);
    const beyond = f64x2.sub(off, tallStep);
    const isJoined = f64x2.mul(f64x2.splat(model.joinShare), v128.load(joined + (<usize>i << 3)));
    const rest = f64x2.sub(one, isJoined);
    const smallPart = f64x2.mul(
      f64x2.mul(rest, f64x2.splat(model.smallShare)),
      f64x2.div(bell(off, model.smallSpread), f64x2.splat(model.smallWidth)),
    );
    const tallPart = f64x2.mul(
      f64x2.mul(rest, f64x2.splat(model.tallShare)),
      f64x2.div(bell(beyond, model.tallSpread), f64x2.splat(model.tallWidth)),
    );
    // Print has no joins: there is nothing to take a power for.
    const joinPart = v128.any_true(isJoined)
      ? f64x2.mul(isJoined, f64x2.div(bell(f64x2.sub(off, joinStep), model.joinSpread), f64x2.splat(model.joinWidth)))
      : isJoined;
    let all = f64x2.add(f64x2.add(f64x2.add(smallPart, tallPart), joinPart), f64x2.mul(rest, elsewhere));
    let isSmall = f64x2.div(smallPart, all);
    let isTall = f64x2.div(tallPart, all);
    let isJoin = f64x2.div(joinPart, all);
    let isOther = f64x2.sub(f64x2.sub(f64x2.sub(one, isSmall), isTall), isJoin);
    if (i + 1 == count) {
      // An odd number: the last one is there twice and counts once.
      all = f64x2.replace_lane(all, 1, 1);
      isSmall = f64x2.replace_lane(isSmall, 1, 0);
      isTall = f64x2.replace_lane(isTall, 1, 0);
      isJoin = f64x2.replace_lane(isJoin, 1, 0);
      isOther = f64x2.replace_lane(isOther, 1, 0);
    }
    small = f64x2.add(small, isSmall);
    tall = f64x2.add(tall, isTall);
    join = f64x2.add(join, isJoin);
    other = f64x2.add(other, isOther);
    mean = f64x2.add(mean, f64x2.mul(isSmall, f64x2.sub(y, offset)));
    square = f64x2.add(square, f64x2.mul(f64x2.mul(isSmall, off), off));
    high = f64x2.add(high, f64x2.mul(isTall, off));
    highSquare = f64x2.add(highSquare, f64x2.mul(isTall, f64x2.mul(beyond, beyond)));
    const risen = f64x2.mul(isSmall, above);
    // One after the other: both may be of one line.
    let place = own + (first << 4);
    store<f64>(place, load<f64>(place) + f64x2.extract_lane(isSmall, 0));
    store<f64>(place, load<f64>(place, 8) + f64x2.extract_lane(risen, 0), 8);
    place = own + (second << 4);
    store<f64>(place, load<f64>(place) + f64x2.extract_lane(isSmall, 1));
    store<f64>(place, load<f64>(place, 8) + f64x2.extract_lane(risen, 1), 8);
    product = f64x2.mul(product, all);
    if ((i & 14) == 14 || i + 2 >= count) {
      v128.store(products + (<usize>(i >> 4) << 4), product);
      product = one;
    }
  }
  v128.store(sums, small);
  v128.store(sums, tall, 16);
  v128.store(sums, join, 32);
  v128.store(sums, other, 48);
  v128.store(sums, mean, 64);
  v128.store(sums, square, 80);
  v128.store(sums, high, 96);
  v128.store(sums, highSquare, 112);
}
