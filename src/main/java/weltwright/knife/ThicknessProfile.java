package weltwright.knife;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;
import weltwright.units.Length;

/**
 * Thicknesses of a knife measured along its length. A place is given by its distance from the tip along the knife,
 * since a maker can always find the tip. A reading farther from the tip than the heel belongs to the handle.
 *
 * <p>Between two readings the thickness is interpolated linearly. Beyond them:
 *
 * <ul>
 *   <li>A handle keeps the thickness of its outermost reading to its end. Where no reading reaches the handle's
 *       greatest thickness, that is placed half-way between the hindmost reading and the butt, since a sheath that is
 *       too roomy can be used and one that is too tight cannot.
 *   <li>A blade has its spine's thickness at the heel. Between its foremost reading and its tip its thickness falls in
 *       proportion to that by its grind.
 * </ul>
 *
 * @param readings from the tip to the butt, no two at one place, at most {@link #MOST}
 */
public record ThicknessProfile(List<Reading> readings) {
    private static final Messages TEXTS = Messages.of(ThicknessProfile.class);

    /** The greatest number of readings; more would only follow the caliper's own error. Chosen by eye. */
    public static final int MOST = 8;

    /** No readings beyond the two thicknesses that every knife has. */
    public static final ThicknessProfile NONE = new ThicknessProfile(List.of());

    /** Readings nearer to each other than this are of one place. Chosen by eye. */
    private static final double SAME_PLACE_MM = 0.5;

    /**
     * A reading within this of the handle's greatest thickness reaches it: the spread of caliper readings, from memory.
     */
    private static final double REACHED_MM = 0.2;

    /** Least thickness by grind that a reading is divided by. Chosen by eye. */
    private static final double LEAST_BLADE_MM = 0.1;

    /**
     * One thickness.
     *
     * @param fromTipMm along the knife; 0 or more
     * @param thicknessMm across the flats; positive
     */
    public record Reading(double fromTipMm, double thicknessMm) {}

    public ThicknessProfile {
        readings = readings.stream()
                .sorted(Comparator.comparingDouble(Reading::fromTipMm))
                .toList();
        if (readings.size() > MOST) {
            throw new UserFacingException(
                    TEXTS.text("thickness-profile.more-than-thicknesses-along-the", MOST),
                    TEXTS.text("thickness-profile.leave-out-those-between-which"));
        }
        for (int i = 1; i < readings.size(); i++) {
            if (readings.get(i).fromTipMm - readings.get(i - 1).fromTipMm < SAME_PLACE_MM) {
                throw new UserFacingException(
                        TEXTS.text(
                                "thickness-profile.two-thicknesses-are-given-for",
                                new Length(readings.get(i).fromTipMm).inMillimetres()),
                        TEXTS.text("thickness-profile.give-one-for-each-place"));
            }
        }
    }

    public boolean isEmpty() {
        return readings.isEmpty();
    }

    /** Returns the profile with one more reading, which replaces one at the same place. */
    public ThicknessProfile with(Reading reading) {
        List<Reading> all = new ArrayList<>(readings);
        all.removeIf(other -> Math.abs(other.fromTipMm - reading.fromTipMm) < SAME_PLACE_MM);
        all.add(reading);
        return new ThicknessProfile(all);
    }

    /** Returns the profile without a reading. */
    public ThicknessProfile without(Reading reading) {
        List<Reading> all = new ArrayList<>(readings);
        all.remove(reading);
        return new ThicknessProfile(all);
    }

    /**
     * Returns the thickness of the handle as a function of the distance from the tip.
     *
     * @param bladeMm from the tip to the heel
     * @param overallMm from the tip to the butt
     * @param greatestMm the handle's greatest thickness
     * @return maps a distance from the tip in mm to a thickness in mm
     */
    public DoubleUnaryOperator ofHandle(double bladeMm, double overallMm, double greatestMm) {
        List<Reading> known = new ArrayList<>(
                readings.stream().filter(r -> r.fromTipMm > bladeMm).toList());
        if (known.isEmpty()) {
            return fromTipMm -> greatestMm;
        }
        if (known.stream().allMatch(r -> r.thicknessMm < greatestMm - REACHED_MM)) {
            double hindmost = known.get(known.size() - 1).fromTipMm;
            known.add(new Reading(Math.max(hindmost, (hindmost + overallMm) / 2), greatestMm));
        }
        return fromTipMm -> interpolated(known, fromTipMm);
    }

    /**
     * Returns the greatest thickness of the blade's section as a function of the distance from the tip.
     *
     * @param bladeMm from the tip to the heel
     * @param spineMm thickness of the spine at the heel
     * @param byGrind the thickness by spine and grind, as a function of the same kind
     * @return maps a distance from the tip in mm to a thickness in mm
     */
    public DoubleUnaryOperator ofBlade(double bladeMm, double spineMm, DoubleUnaryOperator byGrind) {
        List<Reading> known = new ArrayList<>(
                readings.stream().filter(r -> r.fromTipMm <= bladeMm).toList());
        if (known.isEmpty()) {
            return byGrind;
        }
        if (known.get(known.size() - 1).fromTipMm < bladeMm - SAME_PLACE_MM) {
            known.add(new Reading(bladeMm, spineMm));
        }
        Reading first = known.get(0);
        double ratio = first.thicknessMm / Math.max(LEAST_BLADE_MM, byGrind.applyAsDouble(first.fromTipMm));
        return fromTipMm ->
                fromTipMm < first.fromTipMm ? ratio * byGrind.applyAsDouble(fromTipMm) : interpolated(known, fromTipMm);
    }

    private static double interpolated(List<Reading> known, double fromTipMm) {
        Reading before = known.get(0);
        for (Reading next : known) {
            if (next.fromTipMm >= fromTipMm) {
                double gap = next.fromTipMm - before.fromTipMm;
                double share = gap == 0 ? 0 : Math.max(0, (fromTipMm - before.fromTipMm) / gap);
                return before.thicknessMm + share * (next.thicknessMm - before.thicknessMm);
            }
            before = next;
        }
        return before.thicknessMm;
    }
}
