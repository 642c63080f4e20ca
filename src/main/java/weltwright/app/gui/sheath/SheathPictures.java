package weltwright.app.gui.sheath;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import weltwright.app.gui.assembled.SheathPlanPainter;
import weltwright.app.gui.assembled.SheathSectionPainter;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.app.gui.drawing.Viewport;
import weltwright.app.gui.pattern.PiecePainter;
import weltwright.app.gui.pattern.PieceRowLayout;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.job.Job;
import weltwright.job.SheathDesign;
import weltwright.knife.Knife;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.planform.SheathSection;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Throat;
import weltwright.units.MeasureUnit;

/**
 * Paints the job's knife in the sheaths among which its maker chooses, each with all other choices as they are. Called
 * off the event thread. Sizes in px chosen by eye.
 */
final class SheathPictures {
    private static final RigidMotion AT_REST = new RigidMotion(0, new Point(0, 0));
    private static final int MARGIN_PX = 6;

    /** Share of the height that the sheath from its face takes; the section lies below it. */
    private static final double PLAN_SHARE = 0.5;

    /** How far down from the throat the sheath is cut through, as a share of its depth. */
    private static final double SECTION_PLACE = 0.35;

    /** How much of the picture of a throat lies above it. */
    private static final double ABOVE_THROAT = 0.3;

    private static final Set<Piece.Kind> WITH_THROAT = EnumSet.of(Piece.Kind.BODY, Piece.Kind.FACE);
    private static final Set<Piece.Kind> ON_THE_BELT =
            EnumSet.of(Piece.Kind.BODY, Piece.Kind.BACK, Piece.Kind.BELT_STRAP, Piece.Kind.RING_STRAP);

    private SheathPictures() {}

    /** Returns what the pictures of kinds show; equal whichever is chosen, so that choosing draws none of them anew. */
    static Optional<SheathDesign.Input> kinds(Job job) {
        return input(job, spec -> spec.withKind(SheathKind.FOLDED));
    }

    /** Returns what the pictures of throats show, whichever is chosen. */
    static Optional<SheathDesign.Input> throats(Job job) {
        return input(job, spec -> spec.withThroat(spec.throat().withShape(Throat.Shape.STRAIGHT)));
    }

    /** Returns what the pictures of belt loops show, whichever is chosen. */
    static Optional<SheathDesign.Input> belts(Job job) {
        return input(job, spec -> spec.withBelt(spec.belt().withStyle(BeltAttachment.Style.TAIL)));
    }

    /** Returns what the pictures of straps show, whichever is chosen. */
    static Optional<SheathDesign.Input> straps(Job job) {
        return input(job, spec -> spec.withStrap(spec.strap().map(strap -> strap.withOpens(HandleStrap.Side.LEFT))));
    }

    private static Optional<SheathDesign.Input> input(Job job, UnaryOperator<SheathSpec> anyChosen) {
        return SheathDesign.Input.of(job)
                .map(input -> new SheathDesign.Input(input.knife(), anyChosen.apply(input.spec())));
    }

    /** Paints the sheath from its face, and cut through below. */
    static void paintKind(Graphics2D g, SheathDesign.Input shown, SheathKind kind, int sizePx) {
        SheathDesign design = new SheathDesign.Input(shown.knife(), shown.spec().withKind(kind)).design();
        double planPx = PLAN_SHARE * sizePx;
        Graphics2D upper = (Graphics2D) g.create(0, 0, sizePx, (int) planPx);
        Rectangle2D plan = AnnotationPainter.path(design.plan().outline()).getBounds2D();
        SheathPlanPainter painter = new SheathPlanPainter(upper, Viewport.fit(plan, sizePx, planPx, margins()));
        painter.paintLeather(design.plan());
        painter.paintKnife(design.knife().outline(), AT_REST);
        painter.paintStitches(design.plan());
        upper.dispose();
        double from = design.sections().fromMm();
        SheathSection section =
                design.sections().at(from + SECTION_PLACE * (design.sections().toMm() - from));
        double high = section.face().stream().mapToDouble(Point::y).max().orElseThrow() + section.leatherMm();
        double low = section.back().stream().mapToDouble(Point::y).min().orElseThrow() - section.leatherMm();
        double beyond = section.leatherMm(); // of a fold
        Graphics2D lower = (Graphics2D) g.create(0, (int) planPx, sizePx, (int) (sizePx - planPx));
        Viewport fitted = Viewport.fit(
                new Rectangle2D.Double(plan.getMinY(), low, plan.getHeight() + beyond, high - low),
                sizePx,
                sizePx - planPx,
                margins());
        new SheathSectionPainter(lower, fitted).paintLayers(section, SheathSectionPainter.outerEdges(design, section));
        lower.dispose();
    }

    /** Paints the upper end of the face, or of the body that is folded. */
    static void paintThroat(Graphics2D g, SheathDesign.Input shown, Throat.Shape shape, int sizePx) {
        Throat throat = shown.spec().throat().withShape(shape);
        SheathDesign design = new SheathDesign.Input(shown.knife(), shown.spec().withThroat(throat)).design();
        PieceRowLayout pieces = row(design, WITH_THROAT, sizePx);
        double wide = pieces.extent().getWidth();
        // A piece lies tip down, so its y is the knife's x turned round; a tail stands above the throat.
        double throatY = pieces.placed().get(0).shift().y() - design.throatMm();
        Rectangle2D upper =
                new Rectangle2D.Double(pieces.extent().getX(), throatY - (1 - ABOVE_THROAT) * wide, wide, wide);
        paint(g, pieces, Viewport.fit(upper, sizePx, sizePx, margins()));
    }

    /** Paints the pieces that carry the sheath on the belt. */
    static void paintBelt(Graphics2D g, SheathDesign.Input shown, BeltAttachment.Style style, int sizePx) {
        BeltAttachment belt = shown.spec().belt().withStyle(style);
        SheathDesign design = new SheathDesign.Input(shown.knife(), shown.spec().withBelt(belt)).design();
        PieceRowLayout pieces = row(design, ON_THE_BELT, sizePx);
        paint(g, pieces, Viewport.fit(pieces.extent(), sizePx, sizePx, margins()));
    }

    /** Paints the throat and the handle from the face, tip down, with the strap closed. */
    static void paintStrap(Graphics2D g, SheathDesign.Input shown, HandleStrap.Side side, int sizePx) {
        HandleStrap strap = shown.spec().strap().orElse(HandleStrap.USUAL).withOpens(side);
        SheathDesign design =
                new SheathDesign.Input(shown.knife(), shown.spec().withStrap(Optional.of(strap))).design();
        double x = design.throatMm() - strap.aboveThroatMm();
        Knife knife = design.knife();
        double edge = knife.sectionAt(x).edgeMm();
        double spine = knife.sectionAt(x).spineMm();
        Rectangle2D plan = AnnotationPainter.path(design.plan().outline()).getBounds2D();
        double wide = 2 * (strap.aboveThroatMm() + strap.leather().widthMm());
        Rectangle2D seen =
                new Rectangle2D.Double(design.throatMm() - wide / 2, plan.getCenterY() - wide / 2, wide, wide);
        boolean edgeOnLeft = shown.spec().carry().edgeOnLeft();
        Graphics2D tipDown = (Graphics2D) g.create();
        // The knife's axis points to the right of the drawing and the spine up; here they point down, and to the side
        // on which the spine is seen.
        tipDown.transform(
                edgeOnLeft ? new AffineTransform(0, 1, -1, 0, sizePx, 0) : new AffineTransform(0, 1, 1, 0, 0, 0));
        SheathPlanPainter painter = new SheathPlanPainter(tipDown, Viewport.fit(seen, sizePx, sizePx, margins()));
        painter.paintLeather(design.plan());
        painter.paintKnife(knife.outline(), AT_REST);
        painter.paintStitches(design.plan());
        boolean looseAtEdge = edgeOnLeft == (side == HandleStrap.Side.LEFT);
        painter.paintHandleStrap(x, strap.leather().widthMm(), looseAtEdge ? spine : edge, looseAtEdge ? edge : spine);
        tipDown.dispose();
    }

    private static PieceRowLayout row(SheathDesign design, Set<Piece.Kind> kinds, int sizePx) {
        List<Piece> pieces = design.pattern().pieces().stream()
                .filter(piece -> kinds.contains(piece.kind()))
                .toList();
        return PieceRowLayout.of(pieces, new Dimension(sizePx, sizePx), piece -> new Dimension(0, 0));
    }

    private static void paint(Graphics2D g, PieceRowLayout pieces, Viewport viewport) {
        pieces.placed().forEach(placed -> new PiecePainter(g, viewport, placed, MeasureUnit.MILLIMETRE).paintPiece());
    }

    private static Insets margins() {
        return new Insets(MARGIN_PX, MARGIN_PX, MARGIN_PX, MARGIN_PX);
    }
}
