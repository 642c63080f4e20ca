package weltwright.output.cutter;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.message.Messages;
import weltwright.output.cutter.CutElement.Chain;
import weltwright.output.cutter.CutElement.Circle;
import weltwright.output.cutter.CutElement.Text;

/**
 * A cut plan as an ASCII DXF of release 12 (AC1009), the one that every machine reads; in millimetres.
 *
 * <p>The layers are those of the SVG, in capitals; one for the side of the leather that lies down is switched off,
 * which a negative colour says. Lines are POLYLINEs, holes CIRCLEs, text TEXTs, and there is nothing else. Release 12
 * has no header variable for units: it says that they are metric ($MEASUREMENT) and, for later readers, mm ($INSUNITS),
 * and a comment says so in words. Group codes as in Autodesk's "DXF Reference".
 */
public final class CutterDxf {
    /** A file whose first section begins soon. */
    public static final FileKind KIND =
            FileKind.of(Messages.of(CutterDxf.class).text("cut-plan.dxf"), "(^|\\n) *0\\r?\\nSECTION\\r?\\n");

    private static final String EOL = "\r\n";
    private static final int MILLIMETRES = 4;

    /** The letters that a text may be made of as they are; the header names them. */
    private static final Charset LETTERS = Charset.forName("windows-1252");

    /** The longest string that release 12 takes. */
    private static final int LONGEST_TEXT = 255;

    private final StringBuilder dxf = new StringBuilder();
    private final CutPlan plan;

    private CutterDxf(CutPlan plan) {
        this.plan = plan;
    }

    /** Writes the DXF. Throws {@link weltwright.error.UserFacingException} where the file cannot be written. */
    public static void write(CutPlan plan, Path file) {
        AtomicFile.of(file, KIND).write(out -> write(plan, out));
    }

    private static void write(CutPlan plan, OutputStream out) throws IOException {
        out.write(new CutterDxf(plan).all().getBytes(LETTERS));
    }

    private String all() {
        group(999, plan.description());
        header();
        tables();
        section("BLOCKS");
        endSection();
        section("ENTITIES");
        for (CutLayer layer : CutLayer.values()) {
            plan.notes().filter(each -> each.layer() == layer).forEach(this::entity);
            plan.pieces()
                    .flatMap(piece -> piece.elements().stream())
                    .filter(each -> each.layer() == layer)
                    .forEach(this::entity);
        }
        endSection();
        group(0, "EOF");
        return dxf.toString();
    }

    private void header() {
        section("HEADER");
        group(9, "$ACADVER");
        group(1, "AC1009");
        group(9, "$DWGCODEPAGE");
        group(3, "ANSI_1252");
        group(9, "$INSUNITS");
        group(70, MILLIMETRES);
        group(9, "$MEASUREMENT");
        group(70, 1);
        group(9, "$EXTMIN");
        point(10, new Point(0, 0));
        group(9, "$EXTMAX");
        point(10, new Point(plan.widthMm(), plan.heightMm()));
        endSection();
    }

    private void tables() {
        section("TABLES");
        table("LTYPE", 1);
        group(0, "LTYPE");
        group(2, "CONTINUOUS");
        group(70, 0);
        group(3, "Solid line");
        group(72, (int) 'A');
        group(73, 0);
        group(40, 0);
        group(0, "ENDTAB");
        CutLayer[] layers = CutLayer.values();
        table("LAYER", layers.length + 1);
        layer("0", 7);
        for (CutLayer layer : layers) {
            layer(name(layer), layer.isOn(plan.sideUp()) ? layer.dxfColour() : -layer.dxfColour());
        }
        group(0, "ENDTAB");
        table("STYLE", 1);
        group(0, "STYLE");
        group(2, "STANDARD");
        group(70, 0);
        group(40, 0);
        group(41, 1);
        group(50, 0);
        group(71, 0);
        group(42, 1);
        group(3, "txt");
        group(4, "");
        group(0, "ENDTAB");
        endSection();
    }

    private void table(String name, int entries) {
        group(0, "TABLE");
        group(2, name);
        group(70, entries);
    }

    private void layer(String name, int colour) {
        group(0, "LAYER");
        group(2, name);
        group(70, 0);
        group(62, colour);
        group(6, "CONTINUOUS");
    }

    private void entity(CutElement element) {
        String layer = name(element.layer());
        CutElement.Shape shape = element.shape();
        if (shape instanceof Chain chain) {
            polyline(layer, chain.line());
        } else if (shape instanceof Circle circle) {
            start("CIRCLE", layer);
            point(10, circle.centre());
            group(40, circle.radiusMm());
        } else if (shape instanceof Text text) {
            start("TEXT", layer);
            point(10, text.from());
            group(40, text.capitalMm());
            group(1, text(text.text()));
        }
    }

    private void polyline(String layer, Polyline line) {
        start("POLYLINE", layer);
        group(66, 1);
        point(10, new Point(0, 0));
        group(70, line.closed() ? 1 : 0);
        List<Point> points = line.points();
        for (Point vertex : points) {
            start("VERTEX", layer);
            point(10, vertex);
        }
        start("SEQEND", layer);
    }

    private void start(String type, String layer) {
        group(0, type);
        group(8, layer);
    }

    private void section(String name) {
        group(0, "SECTION");
        group(2, name);
    }

    private void endSection() {
        group(0, "ENDSEC");
    }

    /** x, y and a z of 0: group codes n, n + 10, n + 20. */
    private void point(int code, Point at) {
        group(code, at.x());
        group(code + 10, at.y());
        group(code + 20, 0.0);
    }

    private void group(int code, double value) {
        group(code, String.format(Locale.ROOT, "%.4f", value));
    }

    private void group(int code, int value) {
        group(code, Integer.toString(value));
    }

    private void group(int code, String value) {
        dxf.append(String.format(Locale.ROOT, "%3d", code))
                .append(EOL)
                .append(value)
                .append(EOL);
    }

    /** Names of release 12 have capitals, digits, $, - and _. */
    private static String name(CutLayer layer) {
        return layer.id().toUpperCase(Locale.ROOT);
    }

    /**
     * On one line; letters that the file's own do not have as "\U+2600", as later releases take them; %% begins a
     * symbol.
     */
    private static String text(String content) {
        CharsetEncoder known = LETTERS.newEncoder();
        StringBuilder text = new StringBuilder();
        for (char c : content.replace("%%", "%").toCharArray()) {
            String letter = Character.isISOControl(c)
                    ? " "
                    : known.canEncode(c) ? String.valueOf(c) : String.format(Locale.ROOT, "\\U+%04X", (int) c);
            if (text.length() + letter.length() > LONGEST_TEXT) {
                break;
            }
            text.append(letter);
        }
        return text.toString();
    }
}
