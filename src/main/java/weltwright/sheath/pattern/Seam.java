package weltwright.sheath.pattern;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.message.Messages;
import weltwright.sheath.spec.Stitching;

/**
 * A row of stitches through several layers of leather. Hole i of the seam goes through each layer that has it, and each
 * layer has the same length of leather from hole to hole, so that none is gathered.
 *
 * @param kind what it joins
 * @param pitch from hole to hole along the row
 * @param closed whether the last hole is sewn to the first
 * @param stitching the choices for sewing it
 * @param layers all layers from the face to the back; the first has every hole
 */
public record Seam(Kind kind, Pitch pitch, boolean closed, Stitching stitching, List<Layer> layers) {
    private static final Messages TEXTS = Messages.of(Seam.class);

    public Seam {
        layers = List.copyOf(layers);
        int holes = layers.get(0).holes().size();
        for (Layer layer : layers) {
            if (layer.firstHole() < 0 || layer.firstHole() + layer.holes().size() > holes) {
                throw new IllegalArgumentException("the layers of the " + kind.words() + " differ in their holes");
            }
        }
    }

    /** A seam with one pitch all along. */
    public Seam(Kind kind, double pitchMm, boolean closed, Stitching stitching, List<Layer> layers) {
        this(kind, new Pitch(pitchMm, pitchMm, pitchMm), closed, stitching, layers);
    }

    /** What a seam joins; a pattern has at most one of each. */
    public enum Kind {
        /** Face, welt and back. */
        WELT_SEAM(TEXTS.text("seam.welt-seam")),
        /** A tail to the back that it is part of. */
        BELT_LOOP(TEXTS.text("seam.belt-loop")),
        /** A strap to the back. */
        BELT_STRAP(TEXTS.text("seam.belt-strap"));

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** What the maker calls it. */
        public String words() {
            return words;
        }
    }

    /** What the maker calls it. */
    public String name() {
        return kind.words();
    }

    /**
     * The distance from hole to hole along a row: the nearest to the pitch asked for that divides the row. A corner has
     * a hole, and the parts of the row on either side of it have a pitch each.
     *
     * @param meanMm over the whole row
     * @param leastMm of all its parts
     * @param greatestMm of all its parts
     */
    public record Pitch(double meanMm, double leastMm, double greatestMm) {

        /** Returns the greatest difference from a pitch, as a share of that pitch. */
        public double offBy(double wantedMm) {
            return Math.max(Math.abs(leastMm - wantedMm), Math.abs(greatestMm - wantedMm)) / wantedMm;
        }
    }

    /** Returns the mean distance from hole to hole along the row. */
    public double pitchMm() {
        return pitch.meanMm();
    }

    /** Returns the number of holes. */
    public int holeCount() {
        return layers.get(0).holes().size();
    }

    /** Returns the number of stitches without back-stitches. */
    public int stitchCount() {
        return closed ? holeCount() : holeCount() - 1;
    }

    /** Returns the thickness of all leather at a hole. */
    public double stackMm(int hole) {
        return layers.stream()
                .filter(layer -> layer.reaches(hole))
                .mapToDouble(Layer::thicknessMm)
                .sum();
    }

    /** Returns the greatest thickness of all leather at any hole. */
    public double thickestStackMm() {
        double thickest = 0;
        for (int hole = 0; hole < holeCount(); hole++) {
            thickest = Math.max(thickest, stackMm(hole));
        }
        return thickest;
    }

    /**
     * The holes of a row in one piece, in one part of a folded piece, or in several equal pieces that lie on each
     * other.
     *
     * @param piece the name of the {@link Piece}
     * @param part of the piece
     * @param thicknessMm of the layer, all its pieces together
     * @param firstHole index of the seam's hole that is its first
     * @param chiselled whether the holes are marked and struck from the outside of this layer
     * @param holes centres in the order of sewing, in the frame of the piece
     */
    public record Layer(
            String piece, LayerPart part, double thicknessMm, int firstHole, boolean chiselled, List<Point> holes) {
        public Layer {
            holes = List.copyOf(holes);
        }

        /** Returns whether a hole of the seam goes through this layer. */
        public boolean reaches(int hole) {
            return hole >= firstHole && hole < firstHole + holes.size();
        }
    }
}
