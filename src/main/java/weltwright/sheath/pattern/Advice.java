package weltwright.sheath.pattern;

import java.util.List;
import java.util.Optional;
import weltwright.fit.DrawCheck.Side;
import weltwright.fit.Retention;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;

/**
 * One item of advice to the maker before cutting, as data: its kind, severity and figures, in mm and radians. The
 * {@code wording} package words it.
 */
public sealed interface Advice {

    /** Returns its severity. */
    default Severity severity() {
        return Severity.NOTE;
    }

    /**
     * The thickness of the welt, compared with the blade.
     *
     * @param welt its layers
     * @param bladeMm thickness of the blade at its spine
     * @param nearer layers that would be nearer to that, with leather of one more thickness
     */
    record WeltThickness(WeltStack welt, double bladeMm, Optional<WeltStack> nearer) implements Advice {
        private static final double EQUAL_MM = 1e-9;

        /** Returns whether the welt is thinner than the blade. */
        public boolean isThin() {
            return welt.thicknessMm() < bladeMm - EQUAL_MM;
        }

        /** Returns whether it is at least twice as thick; common practice is less, as the blade would rattle. */
        public boolean isThick() {
            return welt.thicknessMm() >= 2 * bladeMm - EQUAL_MM;
        }

        @Override
        public Severity severity() {
            return isThin() || isThick() ? Severity.MIND : Severity.NOTE;
        }
    }

    /** A double-edged blade is given a welt all round, though one along the edge was chosen. */
    record WeltAllRound() implements Advice {}

    /**
     * The knife is drawn in an arc.
     *
     * @param radiusMm of the arc
     * @param towards the side to which the handle moves
     */
    record DrawnInArc(double radiusMm, Side towards) implements Advice {}

    /**
     * The knife is drawn along a line at an angle to its axis.
     *
     * @param turnRad the angle; positive
     * @param towards the side to which the handle moves
     */
    record DrawnAslant(double turnRad, Side towards) implements Advice {}

    /**
     * A stretch of the knife is narrower than what lies deeper and must pass it.
     *
     * @param narrow the stretch
     * @param giveMm by how much formed leather gives
     */
    record NarrowStretch(Retention.Narrow narrow, double giveMm, Severity severity) implements Advice {
        /** Returns whether it is narrower by more than leather gives, so that the sheath stays open there. */
        public boolean isOpen() {
            return narrow.byMm() > giveMm;
        }
    }

    /**
     * The edge passes too near a stitch.
     *
     * @param leastMm least distance
     * @param atMm x of the nearest stitch
     * @param safeMm the least distance that is safe
     */
    record EdgeNearStitches(double leastMm, double atMm, double safeMm) implements Advice {
        @Override
        public Severity severity() {
            return Severity.STOP;
        }
    }

    /** The throat lies before the guard, which rests on it. */
    record SeatedAtGuard() implements Advice {}

    /**
     * The sheath takes in the guard, and is open for it from the throat down past it.
     *
     * @param sides on which the guard stands out
     * @param openMm from the throat to the first stitch on those sides
     * @param edgeMm length of the cutting edge between guard and welt where the edge's side is open; else 0
     */
    record OpenForGuard(List<Side> sides, double openMm, double edgeMm) implements Advice {
        /** Least length that rounds to 1 mm. */
        private static final double LEAST_TOLD_MM = 0.5;

        public OpenForGuard {
            sides = List.copyOf(sides);
        }

        /** Returns whether part of the cutting edge lies open. */
        public boolean isEdgeBare() {
            return edgeMm >= LEAST_TOLD_MM;
        }

        @Override
        public Severity severity() {
            return Severity.MIND;
        }
    }

    /** A strap round the handle keeps the knife in. */
    record HeldByStrap() implements Advice {}

    /**
     * The handle is held by leather that is pushed open as the knife is drawn.
     *
     * @param handleMm how much of the handle is in the sheath
     * @param gripMm over how much of it the leather lies against it
     * @param openedMm by how much it is pushed open
     * @param giveMm by how much formed leather gives
     */
    record HeldByForm(double handleMm, double gripMm, double openedMm, double giveMm) implements Advice {}

    /**
     * The handle is held by friction alone.
     *
     * @param handleMm how much of the handle is in the sheath
     * @param gripMm over how much of it the leather lies against it
     */
    record HeldByFriction(double handleMm, double gripMm) implements Advice {}

    /**
     * The sheath is so much wider than the handle in it that it does not hold it, and there is no strap.
     *
     * @param byMm excess of the throat over the knife in it, without ease, as half of the difference in girth
     * @param giveMm by how much formed leather gives
     */
    record LooseThroat(double byMm, double giveMm) implements Advice {
        @Override
        public Severity severity() {
            return Severity.MIND;
        }
    }

    /** The sheath holds the blade alone, and there is no strap round the handle. */
    record HoldsBladeAlone() implements Advice {
        @Override
        public Severity severity() {
            return Severity.MIND;
        }
    }

    /** Rivets in the back lie against the blade. */
    record RivetsAgainstBlade() implements Advice {
        @Override
        public Severity severity() {
            return Severity.MIND;
        }
    }

    /** A sheath that hangs from a ring cannot be tilted. */
    record TiltLeftOut() implements Advice {}

    /**
     * The spine falls far towards the point, and a folded sheath stays empty there beside its fold.
     *
     * @param byMm by how much it falls up to where the point begins
     */
    record EmptyCorner(double byMm) implements Advice {}

    /**
     * The holes of a seam are not at the pitch of the iron.
     *
     * @param seam its kind
     * @param pitch from hole to hole
     * @param wantedMm the iron's pitch
     * @param holes how many
     */
    record PitchFitted(Seam.Kind seam, Seam.Pitch pitch, double wantedMm, int holes) implements Advice {
        /** Share of the pitch beyond which an iron cannot be set with care to fit. Chosen by eye. */
        private static final double OTHER_IRON = 0.05;

        @Override
        public Severity severity() {
            return pitch.offBy(wantedMm) > OTHER_IRON ? Severity.MIND : Severity.NOTE;
        }
    }

    /**
     * Past a step, as at the end of a thick handle, the leather stays wider than the knife needs, since its row is sewn
     * hole by hole to a welt of equal length.
     *
     * @param kind of the sheath
     * @param bulge which of two panels goes round the knife
     * @param byMm greatest excess width from 8 mm past the step on
     * @param fromMm x of the step
     * @param toMm x from which the leather fits again
     */
    record StaysWide(SheathKind kind, Leather.Bulge bulge, double byMm, double fromMm, double toMm) implements Advice {
        /** Returns whether the face alone goes round the knife, though the back could share that. */
        public boolean isFaceAlone() {
            return kind != SheathKind.FOLDED && bulge == Leather.Bulge.FACE;
        }

        @Override
        public Severity severity() {
            return Severity.MIND;
        }
    }
}
