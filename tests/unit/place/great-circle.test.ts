import { expect, test } from 'vitest';
import { EARTH_RADIUS, greatCircle } from '#engine';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const at = (latitude: number, longitude: number) => ({ latitude: radians(latitude), longitude: radians(longitude) });

test('limit: a quarter of the equator, due east; a quarter of a meridian, due north; the other side of the world', () => {
  const east = greatCircle(at(0, 0), at(0, 90));
  expect(east.distance).toBeCloseTo((EARTH_RADIUS * Math.PI) / 2, 3);
  expect(east.bearing).toBeCloseTo(Math.PI / 2, 12);
  const north = greatCircle(at(0, 25), at(90, 25));
  expect(north.distance).toBeCloseTo((EARTH_RADIUS * Math.PI) / 2, 3);
  expect(north.bearing).toBeCloseTo(0, 12);
  // the haversine is flat there: half a metre is what doubles leave of it
  expect(Math.abs(greatCircle(at(40, -20), at(-40, 160)).distance - EARTH_RADIUS * Math.PI)).toBeLessThan(0.5);
  expect(greatCircle(at(12, 34), at(12, 34))).toEqual({ distance: 0, bearing: 0 });
});

test('rival: angle between vectors from the centre of the earth', () => {
  const vector = ({ latitude, longitude }: { latitude: number; longitude: number }) => [
    Math.cos(latitude) * Math.cos(longitude),
    Math.cos(latitude) * Math.sin(longitude),
    Math.sin(latitude),
  ];
  for (const [a, b] of [
    [at(51.5, -0.13), at(48.86, 2.35)],
    [at(-33.9, 151.2), at(37.8, -122.4)],
    [at(60.1, 179.5), at(60.3, -179.8)],
  ] as const) {
    const [u, v] = [vector(a), vector(b)];
    const cross = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
    const dot = u.reduce((sum, x, i) => sum + x * v[i]!, 0);
    expect(greatCircle(a, b).distance).toBeCloseTo(EARTH_RADIUS * Math.atan2(Math.hypot(...cross), dot), 3);
    // the bearing leads there: going that way by that angle ends at b
    const { distance, bearing } = greatCircle(a, b);
    const angle = distance / EARTH_RADIUS;
    const latitude = Math.asin(Math.sin(a.latitude) * Math.cos(angle) + Math.cos(a.latitude) * Math.sin(angle) * Math.cos(bearing));
    expect(latitude).toBeCloseTo(b.latitude, 10);
  }
});

test('limit: a small step south-west lies as on a plane', () => {
  const { distance, bearing } = greatCircle(at(52, 5), at(51.99, 4.99));
  expect(distance).toBeCloseTo(EARTH_RADIUS * Math.hypot(radians(0.01), radians(0.01) * Math.cos(radians(51.995))), 0);
  expect(bearing).toBeGreaterThan(Math.PI);
  expect(bearing).toBeLessThan(1.5 * Math.PI);
});
