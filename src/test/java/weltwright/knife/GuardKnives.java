package weltwright.knife;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Random outlines of knives in closed form, some with a guard whose ends are known. The blade begins at x = 0. Blade
 * and handle are sums of smooth terms, a guard is a bump of a given profile between its two feet on either or both
 * sides.
 */
final class GuardKnives {
    private static final double STEP_MM = 0.16;

    /**
     * @param ring the outline, counter-clockwise
     * @param handleEndX where the handle's colours end
     * @param guard x of its front and its back, if there is one
     */
    record Example(Polyline ring, double handleEndX, Optional<Ends> guard) {}

    record Ends(double front, double back) {}

    /** How a guard rises from its feet: share of its height over share of the way from the back to the front. */
    private enum Profile {
        BLOCK {
            @Override
            double at(double u) {
                return Math.min(1, 12 * Math.min(u, 1 - u));
            }
        },
        ROUND {
            @Override
            double at(double u) {
                return Math.sqrt(Math.max(0, 1 - Math.pow(2 * u - 1, 2)));
            }
        },
        WEDGE {
            @Override
            double at(double u) {
                return Math.min(1, 3 * Math.min(u, 1 - u));
            }
        },
        /** A finger guard: it sweeps up out of the handle, and ends steeply towards the blade. */
        SWEPT {
            @Override
            double at(double u) {
                return Math.min((1 - Math.cos(Math.PI * Math.min(1, u / 0.8))) / 2, 10 * (1 - u));
            }
        };

        abstract double at(double u);
    }

    private GuardKnives() {}

    static Example plain(Random random) {
        return example(random, false);
    }

    static Example guarded(Random random) {
        return example(random, true);
    }

    private static Example example(Random random, boolean guarded) {
        double blade = between(random, 55, 220);
        double handle = between(random, 85, 130);
        double up = between(random, 6, 20);
        double down = between(random, 6, 24);
        DoubleUnaryOperator handleUp = handleSide(random, handle, up * between(random, 0.75, 1.15), false);
        DoubleUnaryOperator handleDown = handleSide(random, handle, down * between(random, 0.7, 1.2), true);
        DoubleUnaryOperator bladeUp = bladeSide(random, blade, up, 0);
        double choil = !guarded && random.nextInt(4) == 0 ? between(random, 2, 5) : 0;
        DoubleUnaryOperator bladeDown = bladeSide(random, blade, down, choil);
        Ends ends = new Ends(0, 0);
        DoubleUnaryOperator bumpUp = x -> 0;
        DoubleUnaryOperator bumpDown = x -> 0;
        double level = Double.NEGATIVE_INFINITY;
        double levelDown = Double.NEGATIVE_INFINITY;
        if (guarded) {
            Profile profile = Profile.values()[random.nextInt(Profile.values().length)];
            double height = between(random, 3.5, 14);
            double thick = Math.min(between(random, 3, 11), 1.8 * height);
            double front = between(random, 0, 4);
            ends = new Ends(front, front - thick);
            double upHeight = random.nextInt(3) == 0 ? 0 : between(random, 3.5, 14);
            double back = ends.back;
            // Over the higher of both sides, so that it stands out from both by its height.
            levelDown = Math.max(handleDown.applyAsDouble(back), bladeDown.applyAsDouble(front)) + height;
            level = upHeight == 0
                    ? Double.NEGATIVE_INFINITY
                    : Math.max(handleUp.applyAsDouble(back), bladeUp.applyAsDouble(front)) + upHeight;
            bumpDown = x -> profile.at((x - back) / thick);
            bumpUp = bumpDown;
        }
        double noise = random.nextBoolean() ? 0 : between(random, 0, 0.08);
        double lean = Math.toRadians(between(random, -1.5, 1.5));
        double bend = between(random, -0.0004, 0.0004);
        List<Point> ring = new ArrayList<>();
        double butt = -handle;
        for (double x = butt; x < blade; x += STEP_MM) {
            ring.add(new Point(
                    x, -side(handleDown, bladeDown, bumpDown, levelDown, ends, x) + random.nextGaussian() * noise));
        }
        ring.add(new Point(blade, 0));
        for (double x = blade - STEP_MM; x > butt; x -= STEP_MM) {
            ring.add(new Point(x, side(handleUp, bladeUp, bumpUp, level, ends, x) + random.nextGaussian() * noise));
        }
        double cos = Math.cos(lean);
        double sin = Math.sin(lean);
        Polyline outline = Polyline.closed(ring)
                .map(p -> new Point(p.x(), p.y() + bend * p.x() * p.x()))
                .map(p -> new Point(cos * p.x() - sin * p.y(), sin * p.x() + cos * p.y()))
                .resampled(STEP_MM);
        boolean seenAtBack = guarded && random.nextBoolean();
        double end = (seenAtBack ? ends.back : ends.front) + between(random, -0.7, 0.7);
        return new Example(outline, end, guarded ? Optional.of(ends) : Optional.empty());
    }

    private static double side(
            DoubleUnaryOperator handle,
            DoubleUnaryOperator blade,
            DoubleUnaryOperator bump,
            double level,
            Ends ends,
            double x) {
        double own = x < ends.front ? handle.applyAsDouble(x) : blade.applyAsDouble(x);
        boolean inGuard = x >= ends.back && x <= ends.front && level > own;
        return inGuard ? own + (level - own) * bump.applyAsDouble(x) : own;
    }

    /** A butt that is rounded off, a belly or a waist, on the fingers' side swells and grooves as well. */
    private static DoubleUnaryOperator handleSide(Random random, double length, double height, boolean fingers) {
        double belly = between(random, -0.12, 0.2) * height;
        double flare = between(random, -0.1, 0.25) * height;
        double grooves = fingers && random.nextInt(3) == 0 ? between(random, 0.5, 1.8) : 0;
        double wave = between(random, 20, 28);
        double swell = fingers && random.nextInt(2) == 0 ? between(random, 1, 5) : 0;
        double swellAt = -between(random, 9, 26);
        double swellSigma = between(random, 7, 11);
        return x -> {
            double u = -x / length;
            double round = Math.sqrt(Math.max(0, 1 - Math.pow(Math.max(0, (u - 0.9) / 0.1), 2)));
            double soft = 1 - Math.exp(-Math.pow(x / 12, 2));
            return round
                            * (height
                                    + belly * Math.sin(Math.PI * Math.min(1, Math.max(0, u)))
                                    + flare * Math.exp(-Math.pow((u - 0.93) / 0.08, 2))
                                    + soft * grooves * Math.sin(2 * Math.PI * x / wave)
                                    + swell * Math.exp(-Math.pow((x - swellAt) / swellSigma, 2) / 2))
                    + 0.5 * (1 - round);
        };
    }

    /** From the heel on about straight, with a belly, to the tip; with a round choil before it, if there is one. */
    private static DoubleUnaryOperator bladeSide(Random random, double length, double height, double choilMm) {
        double exponent = between(random, 1.8, 4);
        double belly = between(random, -0.05, 0.12) * height;
        double radius = choilMm + between(random, 1, 4);
        return x -> {
            double u = Math.min(1, Math.max(0, x / length));
            double dip = choilMm * Math.exp(-Math.pow((x - radius - 2) / radius, 2));
            return Math.max(0, height * (1 - Math.pow(u, exponent)) + belly * Math.sin(Math.PI * u) - dip);
        };
    }

    private static double between(Random random, double from, double to) {
        return from + (to - from) * random.nextDouble();
    }
}
