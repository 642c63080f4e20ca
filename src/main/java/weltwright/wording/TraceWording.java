package weltwright.wording;

import java.util.Locale;
import java.util.stream.Collectors;
import weltwright.ground.GroundLabel;
import weltwright.message.LengthFormat;
import weltwright.message.Messages;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.TraceNote;
import weltwright.units.MeasureUnit;

/** Words the results of a trace: its notes, its error and the labels of its ground. */
public final class TraceWording {
    /** Number of error terms that are named; the rest add little to the root of the sum of squares. Chosen by eye. */
    private static final int TERMS_NAMED = 3;

    /** For messages without lengths. */
    private static final Messages WORDS = Messages.of(TraceWording.class);

    private static final SentencesByType<TraceNote> NOTES = new SentencesByType<TraceNote>()
            .add(
                    TraceNote.SheetFound.class,
                    (n, in) -> in.text("note.sheet-found", n.page(), n.corners(), n.used(), n.sigmaPx()))
            .add(
                    TraceNote.RulingFound.class,
                    (n, in) -> in.text("note.ruling-found", n.pitchMm(), n.crossings(), n.used(), n.sigmaPx()))
            .add(
                    TraceNote.PaperFound.class,
                    (n, in) ->
                            in.text("note.paper-found", n.widthMm(), n.heightMm(), n.points(), n.used(), n.sigmaPx()))
            .add(TraceNote.PaperSizeFromProportions.class, (n, in) -> in.text("note.paper-size-from-proportions"))
            .add(
                    TraceNote.RectangleByEdges.class,
                    (n, in) -> in.text("note.rectangle-by-edges", n.widthMm(), n.heightMm(), n.used(), n.sigmaPx()))
            .add(
                    TraceNote.RectangleByCorners.class,
                    (n, in) -> in.text("note.rectangle-by-corners", n.widthMm(), n.heightMm(), n.mmPerPx()))
            .add(
                    TraceNote.FocalLength.class,
                    (n, in) -> in.text(
                            "note.focal-length",
                            n.focal35mm(),
                            n.error95Percent(),
                            TraceWording.LENSES.of(n.source(), in)))
            .add(
                    TraceNote.CameraPosition.class,
                    (n, in) -> in.text("note.camera-position", n.distanceMm(), n.slantDegrees()))
            .add(TraceNote.Advised.class, (n, in) -> PhotoWording.sentences(n.advice(), in))
            .add(TraceNote.FreeText.class, (n, in) -> n.sentence());

    /** Clauses after "Focal length 26.1 mm: ". */
    private static final SentencesByType<LensSource> LENSES = new SentencesByType<LensSource>()
            .add(LensSource.GroundAlone.class, (s, in) -> in.text("lens.ground-alone"))
            .add(LensSource.Typed.class, (s, in) -> in.text("lens.typed"))
            .add(LensSource.PictureData.class, (s, in) -> in.text("lens.picture-data"))
            .add(LensSource.Phone.class, (s, in) -> in.text("lens.phone", s.views(), s.name()));

    private static final SentencesByType<GroundLabel> LABELS = new SentencesByType<GroundLabel>()
            .add(GroundLabel.SheetSquares.class, (l, in) -> in.text("ground.sheet-squares", l.page(), l.squareMm()))
            .add(
                    GroundLabel.Ruling.class,
                    (l, in) -> in.text(
                            "ground.ruling",
                            in.unit().format(l.pitchMm()),
                            other(in.unit()).format(l.pitchMm())))
            .add(GroundLabel.UnknownRuling.class, (l, in) -> in.text("ground.unknown-ruling"))
            .add(GroundLabel.Rectangle.class, (l, in) -> in.text("ground.rectangle", l.widthMm(), l.heightMm()));

    private TraceWording() {}

    /** A note in one or two sentences, with lengths in mm. */
    public static String sentence(TraceNote note) {
        return sentence(note, MeasureUnit.MILLIMETRE);
    }

    /** A note in one or two sentences. */
    public static String sentence(TraceNote note, MeasureUnit unit) {
        return NOTES.of(note, Messages.of(TraceWording.class).withUnit(unit));
    }

    /** The label of the lines that are drawn over the photo: "each square is 10 mm". */
    public static String label(GroundLabel label, MeasureUnit unit) {
        return LABELS.of(label, Messages.of(TraceWording.class).withUnit(unit));
    }

    /** A source of error as a noun phrase: "the thickness of the handle". */
    public static String cause(ErrorSource source) {
        return source instanceof ErrorSource.FreeText other ? other.cause() : WORDS.text(key(source) + ".cause");
    }

    /** How to reduce the error from a source, in one sentence. */
    public static String remedy(ErrorSource source) {
        return source instanceof ErrorSource.FreeText other ? other.remedy() : WORDS.text(key(source) + ".remedy");
    }

    /** The error of the outline, its greatest sources, and how to reduce the greatest. */
    public static String sentences(ErrorBudget error, MeasureUnit unit) {
        Messages in = Messages.of(TraceWording.class).withUnit(unit);
        String within = in.text("error.within", error.error95Mm());
        if (error.parts().isEmpty()) {
            return within;
        }
        String causes = error.parts().stream()
                .limit(TERMS_NAMED)
                .map(part -> in.text("error.part", cause(part.source()), part.error95Mm()))
                .collect(Collectors.joining(in.text("error.then")));
        return in.text(
                "error.sources", within, causes, remedy(error.parts().get(0).source()));
    }

    private static MeasureUnit other(LengthFormat unit) {
        return unit == MeasureUnit.INCH ? MeasureUnit.MILLIMETRE : MeasureUnit.INCH;
    }

    private static String key(ErrorSource source) {
        return "error."
                + ((ErrorSource.Known) source).name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
