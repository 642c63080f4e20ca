package weltwright.sheath.pattern;

import java.util.List;
import weltwright.geometry.Point;

/**
 * A row of stitches through several layers of leather. Hole i of the seam goes through each layer that reaches so far,
 * and from hole to hole each has the same length of leather, so that none is gathered.
 *
 * @param kind what it joins
 * @param pitch from hole to hole along the row
 * @param closed whether it runs round, and the last hole is sewn to the first
 * @param backStitches sewn back over at either end
 * @param layers from the face to the back, all those that the stitches go through; the first has every hole
 */
public record Seam(Kind kind, Pitch pitch, boolean closed, int backStitches, List<Layer> layers) {

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
    public Seam(Kind kind, double pitchMm, boolean closed, int backStitches, List<Layer> layers) {
        this(kind, new Pitch(pitchMm, pitchMm, pitchMm), closed, backStitches, layers);
    }

    /** What a seam joins; a pattern has at most one of each. */
    public enum Kind {
        /** Face, welt and back. */
        WELT_SEAM("welt seam"),
        /** A tail to the back that it is part of. */
        BELT_LOOP("belt loop"),
        /** A strap to the back. */
        BELT_STRAP("belt strap");

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
     * The pitch asked for, or the nearest that divides the row. Where corners part the row, which have a hole of their
     * own, each of its parts has a pitch of its own.
     *
     * @param meanMm over the whole row
     * @param leastMm of all its parts
     * @param greatestMm of all its parts
     */
    public record Pitch(double meanMm, double leastMm, double greatestMm) {

        /** By what share of a wished pitch it differs from that where it differs most. */
        public double offBy(double wishedMm) {
            return Math.max(Math.abs(leastMm - wishedMm), Math.abs(greatestMm - wishedMm)) / wishedMm;
        }
    }

    /** From hole to hole along the row; where corners part it, on average. */
    public double pitchMm() {
        return pitch.meanMm();
    }

    /** In the layer that has every hole. */
    public int holeCount() {
        return layers.get(0).holes().size();
    }

    /** From hole to hole; back-stitches are not counted. */
    public int stitchCount() {
        return closed ? holeCount() : holeCount() - 1;
    }

    /** Of all the leather that the needles go through at a hole. */
    public double stackMm(int hole) {
        return layers.stream()
                .filter(layer -> layer.reaches(hole))
                .mapToDouble(Layer::thicknessMm)
                .sum();
    }

    /** Where that is greatest. */
    public double thickestStackMm() {
        double thickest = 0;
        for (int hole = 0; hole < holeCount(); hole++) {
            thickest = Math.max(thickest, stackMm(hole));
        }
        return thickest;
    }

    /**
     * The holes of the row in one piece, or in one part of a piece that is folded, or in several pieces of one shape
     * that lie on each other.
     *
     * @param piece the name of the {@link Piece}
     * @param part of the piece
     * @param thicknessMm of it, all its pieces together
     * @param firstHole which hole of the seam is its first
     * @param chiselled whether the holes are marked and struck from this layer's outside; through the others they come
     *     out
     * @param holes their centres in the order of sewing, in the frame of the piece
     */
    public record Layer(
            String piece, LayerPart part, double thicknessMm, int firstHole, boolean chiselled, List<Point> holes) {
        public Layer {
            holes = List.copyOf(holes);
        }

        /** Whether a hole of the seam goes through it. */
        public boolean reaches(int hole) {
            return hole >= firstHole && hole < firstHole + holes.size();
        }
    }
}
