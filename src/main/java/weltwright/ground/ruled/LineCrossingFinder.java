package weltwright.ground.ruled;

import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.image.InterpolatedChannel;

/**
 * Finds a crossing of two ruled lines near a place where one is expected, to a small fraction of a pixel.
 *
 * <p>Each line is looked at where nothing but the line should be: on the two stretches, or arms, between this crossing
 * and the next on either side, by the profile across. The crossing is where the lines through the arms' middles meet.
 * What lies at the crossing itself, where bold meets thin and ink runs, has no say.
 */
final class LineCrossingFinder {
    /** An arm's middle, and half its length, as parts of the way to the next crossing. */
    private static final double ARM_AT = 0.3;

    private static final double ARM_HALF = 0.15;

    /** How far across a line is looked for, at most, as a part of the way to the next crossing. */
    private static final double REACH = 0.27;

    private static final int SAMPLES_ALONG = 9;

    private final InterpolatedChannel levels;
    private final int sign;
    private final double widthPx;

    /**
     * @param sign 1 where lines are lighter than the ground, -1 where darker
     * @param widthPx of the thinner lines, about
     */
    LineCrossingFinder(InterpolatedChannel levels, int sign, double widthPx) {
        this.levels = levels;
        this.sign = sign;
        this.widthPx = widthPx;
    }

    int sign() {
        return sign;
    }

    /**
     * @param guess where the crossing should be
     * @param right from there to the next crossing along the one line, in pixels
     * @param up to the next along the other
     * @param leastContrast arms with less do not count
     * @param leastArms three or all four, without which there is no crossing
     */
    Optional<LineCrossing> near(Point guess, Point right, Point up, double leastContrast, int leastArms) {
        if (!levels.contains(guess, 2)) {
            return Optional.empty();
        }
        Line across = line(guess, right, up, leastContrast, leastArms - 2);
        if (across.arms == 0) {
            return Optional.empty();
        }
        Line upright = line(guess, up, right, leastContrast, leastArms - across.arms);
        if (upright.arms == 0) {
            return Optional.empty();
        }
        double t = upright.through.minus(across.through).cross(upright.along) / across.along.cross(upright.along);
        return Optional.of(new LineCrossing(
                across.through.plus(across.along.times(t)),
                Math.min(across.contrast, upright.contrast),
                Math.min(across.widthPx, upright.widthPx),
                across.arms + upright.arms));
    }

    private record Line(Point through, Point along, double contrast, double widthPx, int arms) {}

    /** @param leastArms one or both, without which there is no line; the second is not looked for in vain */
    private Line line(Point guess, Point step, Point aside, double leastContrast, int leastArms) {
        Point[] middles = new Point[2];
        double contrast = 0;
        double width = 0;
        int arms = 0;
        for (int side = 0; side < 2; side++) {
            Point middle = guess.plus(step.times(side == 0 ? -ARM_AT : ARM_AT));
            Optional<LineProfile> stroke = stroke(middle, step, aside);
            if (stroke.isPresent() && stroke.get().contrast() >= leastContrast) {
                middles[arms++] =
                        middle.plus(step.unit().left().times(stroke.get().offsetPx()));
                contrast += stroke.get().contrast();
                width += stroke.get().widthPx();
            } else if (leastArms == 2) {
                break;
            }
        }
        return switch (arms < leastArms ? 0 : arms) {
            case 2 -> new Line(middles[0], middles[1].minus(middles[0]), contrast / 2, width / 2, 2);
            case 1 -> new Line(middles[0], step, contrast, width, 1);
            default -> new Line(guess, step, 0, 0, 0);
        };
    }

    private Optional<LineProfile> stroke(Point middle, Point step, Point aside) {
        if (!levels.contains(middle, 2)) {
            return Optional.empty();
        }
        Point along = step.unit();
        double lengthPx = step.norm();
        double stepPx = Math.max(0.5, Math.min(2, widthPx / 4));
        double room = REACH * Math.abs(aside.dot(along.left()));
        int reach = (int) (Math.min(room, 3.5 * widthPx + 3) / stepPx);
        double alongStepPx = Math.max(1, 2 * ARM_HALF * lengthPx / SAMPLES_ALONG);
        double[] profile = levels.profile(middle, along, ARM_HALF * lengthPx, alongStepPx, reach, stepPx);
        return LineProfile.in(profile, stepPx, sign, widthPx);
    }
}
