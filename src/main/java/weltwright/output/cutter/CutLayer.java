package weltwright.output.cutter;

import java.util.Locale;
import java.util.Optional;

/**
 * The layers of a drawing for a cutter, by what the machine does with their lines; in the order in which it should, so
 * that a piece is cut loose last. Each has a pure colour of its own, for machines that go by colour.
 */
public enum CutLayer {
    /** Names, beside the pieces and never on them. */
    TEXT("#ff00ff", 6),
    /** Drawn on the flesh side: folds, where stitching starts and stops, notches, the knife. */
    MARK_FLESH("#00ffff", 4),
    /** Drawn on the grain side, where other leather covers it once the sheath is made. */
    MARK_GRAIN("#00ff00", 3),
    /** Cut out as small circles: holes for stitches, rivets, snaps and the drain. */
    PUNCH("#0000ff", 5),
    /** Cut through. */
    CUT("#ff0000", 1);

    private final String svgColour;
    private final int dxfColour;

    CutLayer(String svgColour, int dxfColour) {
        this.svgColour = svgColour;
        this.dxfColour = dxfColour;
    }

    /** Its name in an SVG; a DXF has the same in capitals. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** As SVG 1.1 writes colours, chapter 4.2. */
    String svgColour() {
        return svgColour;
    }

    /** The same colour's number in AutoCAD's palette, in which 1 to 6 are the pure ones. */
    int dxfColour() {
        return dxfColour;
    }

    /** The side of the leather that its lines are drawn on; empty where that makes no difference. */
    private Optional<LeatherSide> side() {
        return switch (this) {
            case MARK_GRAIN -> Optional.of(LeatherSide.GRAIN);
            case MARK_FLESH -> Optional.of(LeatherSide.FLESH);
            case TEXT, PUNCH, CUT -> Optional.empty();
        };
    }

    /** Whether a machine that sees this side of the leather may draw the layer: else it is there, but switched off. */
    boolean isOn(LeatherSide up) {
        return side().isEmpty() || side().get() == up;
    }
}
