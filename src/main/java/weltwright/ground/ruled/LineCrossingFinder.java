package weltwright.ground.ruled;

import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.image.InterpolatedChannel;

/**
 * Finds the crossing of two ruled lines near a predicted position, to a small fraction of a pixel.
 *
 * <p>Each line is located in profiles across its two arms, the stretches between this crossing and its neighbours. The
 * crossing is the intersection of the lines through the arms' middles. The crossing itself, where bold and thin lines
 * overlap and ink runs, is not sampled.
 */
final class LineCrossingFinder {
    /** Middle of an arm, relative to the step. Chosen by eye. */
    private static final double ARM_AT = 0.3;

    /** Half the length of an arm, relative to the step. Chosen by eye. */
    private static final double ARM_HALF = 0.15;

    /** Greatest reach of a profile to either side, relative to the step across the line. Chosen by eye. */
    private static final double REACH = 0.27;

    /** Number of samples along an arm. Chosen by eye. */
    private static final int SAMPLES_ALONG = 9;

    private final InterpolatedChannel levels;
    private final int sign;
    private final double widthPx;

    /**
     * @param sign 1 where lines are lighter than the ground, -1 where darker
     * @param widthPx approximate width of the thinner lines
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
     * Finds a crossing.
     *
     * @param guess predicted position
     * @param right vector to the next crossing along one line, in pixels
     * @param up vector to the next crossing along the other line
     * @param leastContrast least contrast of an arm, in grey levels
     * @param leastArms least number of arms, 3 or 4
     */
    Optional<LineCrossing> near(Point guess, Point right, Point up, double leastContrast, int leastArms) {
        if (!levels.contains(guess, 2)) {
            return Optional.empty();
        }
        Line level = line(guess, right, up, leastContrast, leastArms - 2);
        if (level.arms == 0) {
            return Optional.empty();
        }
        Line upright = line(guess, up, right, leastContrast, leastArms - level.arms);
        if (upright.arms == 0) {
            return Optional.empty();
        }
        double t = upright.through.minus(level.through).cross(upright.along) / level.along.cross(upright.along);
        return Optional.of(new LineCrossing(
                level.through.plus(level.along.times(t)),
                Math.min(level.contrast, upright.contrast),
                Math.min(level.widthPx, upright.widthPx),
                level.arms + upright.arms));
    }

    private record Line(Point through, Point along, double contrast, double widthPx, int arms) {}

    /**
     * Locates a line by its arms.
     *
     * @param leastArms least number of arms, 1 or 2; with 2 the second arm is skipped where the first is missing
     */
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
