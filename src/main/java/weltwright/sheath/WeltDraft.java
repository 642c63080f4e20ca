package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.planform.Planform;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.stitch.StitchRow;

/**
 * Drafts the pieces of the welt and its layers of the main seam, for each thickness of leather, whole or in two parts.
 */
final class WeltDraft {
    private static final Messages TEXTS = Messages.of(WeltDraft.class);

    /** Tolerance of cleaning an outline, finer than a hand can cut. Chosen by eye. */
    private static final double SPECK_MM = 0.003;

    /** Least number of stitches that hold a part of a welt. Chosen by eye. */
    private static final int LEAST_STITCHES = 4;

    private static final String THROAT_PART = ", throat part";
    private static final String TIP_PART = ", tip part";

    private final SheathSpec spec;
    private final Planform form;
    private final WeltStack stack;
    private final StitchRow stitches;
    private final PieceOrientation laying;
    private final int holes;

    WeltDraft(SheathSpec spec, Planform form, WeltStack stack, StitchRow stitches, PieceOrientation laying) {
        this.spec = spec;
        this.form = form;
        this.stack = stack;
        this.stitches = stitches;
        this.laying = laying;
        holes = stitches.holesWithin(form.weltedMm());
    }

    List<Piece> pieces() {
        List<Piece> pieces = new ArrayList<>();
        for (WeltStack.Sheets sheets : stack.sheets()) {
            for (Part part : parts()) {
                pieces.add(laying.lay(new Piece(
                        Piece.Kind.WELT,
                        id(sheets, part),
                        name(sheets, part),
                        sheets.count(),
                        sheets.thicknessMm(),
                        part.region().simplified(SPECK_MM).boundary(),
                        StitchRow.holes(part.holes(stitches), spec.stitching()),
                        marks(part))));
            }
        }
        return pieces;
    }

    List<Seam.Layer> layers() {
        List<Seam.Layer> layers = new ArrayList<>();
        for (WeltStack.Sheets sheets : stack.sheets()) {
            for (Part part : parts()) {
                layers.add(laying.lay(new Seam.Layer(
                        name(sheets, part),
                        LayerPart.WHOLE,
                        sheets.count() * sheets.thicknessMm(),
                        part.first(),
                        false,
                        part.holes(stitches))));
            }
        }
        return layers;
    }

    private String id(WeltStack.Sheets sheets, Part part) {
        String of = stack.sheets().size() == 1 ? "" : " of " + stack.thickness(sheets) + " mm";
        return Piece.Kind.WELT.id() + of + part.id();
    }

    private String name(WeltStack.Sheets sheets, Part part) {
        String welt = Piece.Kind.WELT.words();
        String sheet = stack.sheets().size() == 1
                ? welt
                : TEXTS.text("welt-draft.of-mm", welt, Language.decimal(stack.thickness(sheets)));
        return part.id().isEmpty()
                ? sheet
                : TEXTS.text(part.id().equals(THROAT_PART) ? "welt-draft.throat-part" : "welt-draft.tip-part", sheet);
    }

    /** A part of the welt with the holes from {@code first} to {@code last}. */
    private record Part(String id, Region region, int first, int last) {
        List<Point> holes(StitchRow row) {
            return row.on(row.line()).subList(first, last + 1);
        }
    }

    private List<Part> parts() {
        Part whole = new Part("", form.welt(), 0, holes - 1);
        if (!spec.welt().inTwo() || holes < 2 * LEAST_STITCHES + 1) {
            return List.of(whole);
        }
        int joint = joint();
        Point here = stitches.on(stitches.line()).get(joint);
        Point there = stitches.on(stitches.line()).get(joint + 1);
        Point middle = here.towards(there, 0.5);
        Point across = there.minus(here).unit().left();
        List<Region> parts = form.welt().cutInTwo(middle, across);
        boolean throatFirst = parts.get(0).distanceTo(here) < parts.get(1).distanceTo(here);
        return List.of(
                new Part(THROAT_PART, parts.get(throatFirst ? 0 : 1), 0, joint),
                new Part(TIP_PART, parts.get(throatFirst ? 1 : 0), joint + 1, holes - 1));
    }

    /**
     * Returns the last hole before the joint: past the tip, where no edge presses on the joint, if enough holes are
     * left there, else half-way; in either case where the welt is whole.
     */
    private int joint() {
        List<Point> row = stitches.on(stitches.line());
        int deepest = 0;
        for (int i = 1; i < holes; i++) {
            deepest = row.get(i).x() > row.get(deepest).x() ? i : deepest;
        }
        int pastTip = deepest + LEAST_STITCHES;
        int wanted = pastTip + LEAST_STITCHES < holes ? pastTip : (holes - 1) / 2;
        return Math.min(wanted, stitches.holesWithin(form.skivedFromMm()) - 2);
    }

    private List<Mark> marks(Part part) {
        List<Mark> marks = new ArrayList<>(
                stitches.marks(stitches.line(), spec.stitching().marginMm(), part.first(), part.last()));
        if (spec.kind() != SheathKind.PANELS && part.last() == holes - 1) {
            Polyline across = stitches.across(
                    form.skivedFromMm(),
                    spec.welt().innerMarginMm(),
                    spec.stitching().marginMm());
            marks.add(new Mark(across, Mark.Kind.SKIVE, TEXTS.text("welt-draft.skive-to-nothing")));
        }
        return marks;
    }
}
