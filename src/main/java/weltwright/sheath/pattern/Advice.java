package weltwright.sheath.pattern;

import java.util.List;
import java.util.Optional;
import weltwright.fit.DrawCheck.Side;
import weltwright.fit.Retention;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;

/**
 * One thing that the maker should know before cutting, as data: what it is, how much it matters and the figures that
 * belong to it, in mm and radians. Its sentences are worded where it is shown.
 */
public sealed interface Advice {

    /** How much it matters. */
    Severity severity();

    /**
     * The welt and how it compares with the blade.
     *
     * @param welt its layers
     * @param bladeMm thickness of the blade at its spine
     * @param nearer layers that would come nearer to it, with leather of one more thickness
     */
    record WeltThickness(WeltStack welt, double bladeMm, Optional<WeltStack> nearer) implements Advice {
        private static final double EQUAL_MM = 1e-9;

        /** Whether the welt is thinner than the blade. */
        public boolean isThin() {
            return welt.thicknessMm() < bladeMm - EQUAL_MM;
        }

        /** Whether it is at least twice as thick: common practice is less, lest the blade rattle. */
        public boolean isThick() {
            return welt.thicknessMm() >= 2 * bladeMm - EQUAL_MM;
        }

        @Override
        public Severity severity() {
            return isThin() || isThick() ? Severity.MIND : Severity.NOTE;
        }
    }

    /** A double-edged blade has been given a welt all round, though one along the edge was asked for. */
    record WeltAllRound() implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * The knife is drawn in an arc.
     *
     * @param radiusMm of the arc
     * @param towards the side to which the handle swings
     */
    record DrawnInArc(double radiusMm, Side towards) implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * The knife is drawn along a line that is turned from its axis.
     *
     * @param turnRad by how much; positive
     * @param towards the side to which the handle goes
     */
    record DrawnAslant(double turnRad, Side towards) implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * A stretch of the knife is narrower than what lies deeper and must pass it.
     *
     * @param narrow the stretch
     * @param giveMm by how much formed leather gives
     */
    record NarrowStretch(Retention.Narrow narrow, double giveMm, Severity severity) implements Advice {
        /** Whether it is narrower by more than leather gives, so that the sheath is kept open there. */
        public boolean isOpen() {
            return narrow.byMm() > giveMm;
        }
    }

    /**
     * The edge passes too near to the stitches.
     *
     * @param leastMm how near
     * @param atMm x of the nearest stitch
     * @param safeMm the least distance that is safe
     */
    record EdgeNearStitches(double leastMm, double atMm, double safeMm) implements Advice {
        @Override
        public Severity severity() {
            return Severity.STOP;
        }
    }

    /** The throat lies before the guard, which stands on it. */
    record SeatedAtGuard() implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * The sheath takes in the guard, and is open for it from the throat down past it.
     *
     * @param sides on which the guard stands out
     * @param openMm from the throat to the first stitch on those sides
     * @param edgeMm how much of the cutting edge lies between guard and welt where the edge's side is open; else 0
     */
    record OpenForGuard(List<Side> sides, double openMm, double edgeMm) implements Advice {
        /** Rounds to 1 mm. */
        private static final double LEAST_TOLD_MM = 0.5;

        public OpenForGuard {
            sides = List.copyOf(sides);
        }

        /** Whether so much of the cutting edge lies open that it must be told. */
        public boolean isEdgeBare() {
            return edgeMm >= LEAST_TOLD_MM;
        }

        @Override
        public Severity severity() {
            return Severity.MIND;
        }
    }

    /** A strap round the handle keeps the knife in. */
    record HeldByStrap() implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * The handle is held by leather that is pushed open as the knife is drawn.
     *
     * @param handleMm how much of the handle is in the sheath
     * @param gripMm over how much of it the leather lies against it
     * @param openedMm by how much it is pushed open
     * @param giveMm by how much formed leather gives
     */
    record HeldByForm(double handleMm, double gripMm, double openedMm, double giveMm) implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * The handle is held by friction alone.
     *
     * @param handleMm how much of the handle is in the sheath
     * @param gripMm over how much of it the leather lies against it
     */
    record HeldByFriction(double handleMm, double gripMm) implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * The sheath is so much wider than the handle in it that it does not hold it, and there is no strap.
     *
     * @param byMm how much wider the throat is than the knife in it, without ease, as half of the difference in girth
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
    record TiltLeftOut() implements Advice {
        @Override
        public Severity severity() {
            return Severity.NOTE;
        }
    }

    /**
     * A seam whose holes are not at the iron's pitch, so that the iron does not fit it.
     *
     * @param seam which
     * @param pitch from hole to hole
     * @param wantedMm the iron's pitch
     * @param holes how many
     */
    record PitchFitted(Seam.Kind seam, Seam.Pitch pitch, double wantedMm, int holes) implements Advice {
        /** What differs from the iron by more than this share is no longer a matter of setting it with care. */
        private static final double OTHER_IRON = 0.05;

        @Override
        public Severity severity() {
            return pitch.offBy(wantedMm) > OTHER_IRON ? Severity.MIND : Severity.NOTE;
        }
    }

    /**
     * Past a step, as at the end of a thick handle, the leather stays wider than the knife needs: its row is sewn hole
     * by hole to a welt that is not gathered, and comes in no faster.
     *
     * @param kind of the sheath
     * @param bulge which of two panels goes round the knife
     * @param byMm the most by which it is still too wide 8 mm past the step, or farther on
     * @param fromMm x of the step
     * @param toMm x from which the leather fits again
     */
    record StaysWide(SheathKind kind, Leather.Bulge bulge, double byMm, double fromMm, double toMm) implements Advice {
        /** Whether the face alone goes round the knife, though the back could share that. */
        public boolean isFaceAlone() {
            return kind != SheathKind.FOLDED && bulge == Leather.Bulge.FACE;
        }

        @Override
        public Severity severity() {
            return Severity.MIND;
        }
    }
}
