package weltwright.app.gui.theme;

import java.awt.Color;
import javax.swing.UIManager;

/**
 * The program's own colours of the installed theme, read from the UI defaults. Their values stand in the properties
 * files of the themes (see {@link Theme}). Each is {@code null} before a theme is installed.
 */
public final class ThemeColors {
    private static final String PREFIX = "Weltwright.";

    private ThemeColors() {}

    /** Background of canvases. */
    public static Color canvas() {
        return color("canvas");
    }

    /** Background of forms. */
    public static Color surface() {
        return color("surface");
    }

    /** Background of what stands out of the surface, such as cards. */
    public static Color raised() {
        return color("raised");
    }

    /** Line between parts of the window. */
    public static Color line() {
        return color("line");
    }

    /** What is selected, focused or to be done next. */
    public static Color accent() {
        return color("accent");
    }

    public static Color leather() {
        return color("leather");
    }

    /** A piece that lies on leather of the same kind, before it is cut. */
    public static Color piece() {
        return color("piece");
    }

    /** Text on such a piece, and on leather. */
    public static Color pieceText() {
        return color("pieceText");
    }

    /** Section of the welt, a little darker than the leather beside it. */
    public static Color welt() {
        return color("welt");
    }

    /** Fill of the knife. */
    public static Color steel() {
        return color("steel");
    }

    public static Color thread() {
        return color("thread");
    }

    /** Cavity of a cross-section. */
    public static Color cavity() {
        return color("cavity");
    }

    /** Line along which leather is cut. */
    public static Color cutLine() {
        return color("cutLine");
    }

    public static Color hole() {
        return color("hole");
    }

    /** Line that is marked on leather but not cut. */
    public static Color markLine() {
        return color("markLine");
    }

    /** Contour of the knife. */
    public static Color knifeLine() {
        return color("knifeLine");
    }

    public static Color text() {
        return color("text");
    }

    public static Color secondaryText() {
        return color("secondaryText");
    }

    public static Color error() {
        return color("error");
    }

    public static Color success() {
        return color("success");
    }

    public static Color warning() {
        return color("warning");
    }

    public static Color notificationBackground() {
        return color("notificationBackground");
    }

    /** Edge side of an outline over a photo. */
    public static Color edgeOverlay() {
        return color("overlay.edge");
    }

    /** Spine side of an outline over a photo. */
    public static Color spineOverlay() {
        return color("overlay.spine");
    }

    /** Handle of an outline over a photo, and any selected point. */
    public static Color handleOverlay() {
        return color("overlay.handle");
    }

    /** Uncertain stretches of an outline. */
    public static Color uncertainOverlay() {
        return color("overlay.uncertain");
    }

    /** Dimension lines over a photo. */
    public static Color dimensionOverlay() {
        return color("overlay.dimension");
    }

    /** Label with a ground's name. */
    public static Color groundOverlay() {
        return color("overlay.ground");
    }

    /** Lines of a ground over a photo. */
    public static Color groundLineOverlay() {
        return color("overlay.groundLine");
    }

    /** Dark halo of a ground's lines. */
    public static Color groundHaloOverlay() {
        return color("overlay.groundHalo");
    }

    /** Inside of the circle that marks a landmark. */
    public static Color landmarkFillOverlay() {
        return color("overlay.landmarkFill");
    }

    /** Dark halo of a light line over a photo. */
    public static Color haloOverlay() {
        return color("overlay.halo");
    }

    /** Background of text over a photo. */
    public static Color labelBackgroundOverlay() {
        return color("overlay.labelBackground");
    }

    private static Color color(String name) {
        return UIManager.getColor(PREFIX + name);
    }
}
