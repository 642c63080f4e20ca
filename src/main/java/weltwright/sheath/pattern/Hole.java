package weltwright.sheath.pattern;

import weltwright.geometry.Point;

/**
 * A hole through one piece of leather.
 *
 * @param centre in the frame of the piece, in mm
 * @param diameterMm of the awl, chisel or punch that makes it; positive
 * @param use what it is for
 */
public record Hole(Point centre, double diameterMm, Use use) {

    /** What a hole is for. */
    public enum Use {
        STITCH,
        DRAIN,
        RIVET,
        SNAP
    }
}
