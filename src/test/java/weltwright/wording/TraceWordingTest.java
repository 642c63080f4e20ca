package weltwright.wording;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.ground.GroundLabel;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;
import weltwright.units.MeasureUnit;

/** Word for word, what the program told when its sentences were still written where their values are computed. */
class TraceWordingTest {
    private static final LensSource PHONE = new LensSource.Phone("Tomás' phone", 5, 26.125);

    private static final Map<TraceNote, String> NOTES = new LinkedHashMap<>();

    static {
        NOTES.put(
                new TraceNote.SheetFound("A4", 1204, 1198, 0.125),
                "A4 sheet: 1204 corners found, 1198 of them used, each to 0.13 pixels.");
        NOTES.put(
                new TraceNote.RulingFound(12.7, 300, 299, 0.1),
                "Ruled ground, 12.7 mm from line to line: 300 crossings found, 299 of them used, each to 0.10 pixels.");
        NOTES.put(
                new TraceNote.PaperFound(297, 210, 640, 612, 0.211),
                "Paper of 297.0 mm by 210.0 mm: 640 points of its edges found, 612 of them used, each to 0.21 pixels.");
        NOTES.put(
                new TraceNote.PaperSizeFromProportions(),
                "That size follows from the sheet's proportions; A3 and A5 have those of A4, so if it is one of them, set"
                        + " its four corners by hand.");
        NOTES.put(
                new TraceNote.RectangleByEdges(250, 170.25, 80, 0.3),
                "Rectangle of 250.0 mm by 170.3 mm: the straight edges between its corners were found, 80 points of them,"
                        + " each to 0.30 pixels.");
        NOTES.put(
                new TraceNote.RectangleByCorners(250, 170, 0.108),
                "Rectangle of 250.0 mm by 170.0 mm: by its four corners alone. A corner that is off by one pixel is off by"
                        + " 0.11 mm; set them as near as you can.");
        NOTES.put(
                new TraceNote.FocalLength(26.13, 0.449, new LensSource.GroundAlone()),
                "Focal length 26.1 mm in 35 mm terms, to 0.4 %: from the ground alone.");
        NOTES.put(
                new TraceNote.FocalLength(26, 1, new LensSource.Typed(26)),
                "Focal length 26.0 mm in 35 mm terms, to 1.0 %: as typed, checked against the ground.");
        NOTES.put(
                new TraceNote.FocalLength(26, 1, new LensSource.PictureData(26)),
                "Focal length 26.0 mm in 35 mm terms, to 1.0 %: from the picture's data and the ground.");
        NOTES.put(
                new TraceNote.FocalLength(26, 1, PHONE),
                "Focal length 26.0 mm in 35 mm terms, to 1.0 %: from 5 photos of the sheet taken with \"Tomás' phone\" and"
                        + " from the ground.");
        NOTES.put(
                new TraceNote.CameraPosition(1360.4, 4.5),
                "Seen from 1360 mm away, 5 degrees off the straight view from above.");
        NOTES.put(new TraceNote.FreeText("Seen {0} from 'afar'."), "Seen {0} from 'afar'.");
        advised(
                new PhotoAdvice.TooNear(250, 420),
                "The camera was only 250 mm above the ground, so half a millimetre of error in the handle's thickness makes"
                        + " a knife of 200 mm 0.4 mm too long or too short. Photograph from 420 mm or more, and zoom in"
                        + " instead.");
        advised(
                new PhotoAdvice.TooSlanted(24.6),
                "The camera saw the ground's middle 25 degrees from aside, so the knife's thickness shows. Hold it over the"
                        + " middle of the knife, within ten degrees of straight down.");
        advised(
                new PhotoAdvice.Blurred(6.25, 0.84),
                "The picture is blurred: sharp edges on the ground are smeared over 6.3 pixels, 0.8 mm. Tap the ground on"
                        + " the screen to focus there, hold still or use a stand, and wipe the lens.");
        advised(
                new PhotoAdvice.BlurredAtUnknownScale(6.25),
                "The picture is blurred: sharp edges on the ground are smeared over 6.3 pixels. Tap the ground on the"
                        + " screen to focus there, hold still or use a stand, and wipe the lens.");
        advised(
                new PhotoAdvice.TooDark(80.5),
                "The picture is dark: the lightest it shows is level 81 of 255. Use more light, from a window or two lamps,"
                        + " and no flash.");
        advised(
                new PhotoAdvice.Overexposed(0.125),
                "13 % of the picture is burnt out to plain white. Tap the bright part on the screen, or lower the exposure;"
                        + " use flat light and no flash.");
        advised(
                new PhotoAdvice.Hazy(120, 201.3),
                "The picture is hazy: all that it shows lies between level 120 and 201 of 255. Wipe the lens, and turn the"
                        + " ground or the light until nothing shines.");
        advised(
                new PhotoAdvice.FaintPrint(0.31),
                "The ground's print hardly shows: it differs from what is beside it by 31 %. Turn the ground or the light"
                        + " until nothing shines, and wipe the lens.");
        advised(
                new PhotoAdvice.GroundHidden(500, 1200),
                "Only 500 of the ground's 1200 reference points are to be seen. Have all of the sheet or ground in view,"
                        + " and nothing but the knife on it.");
        advised(
                new PhotoAdvice.KnifeReachesOver(),
                "The knife runs out of the picture. Photograph it from farther away, with the whole knife in view.");
        advised(
                new PhotoAdvice.TooCoarse(3.14),
                "There are only 3.1 pixels to the millimetre. Use the photo at its full size, with the ground filling most"
                        + " of it.");
        advised(contradicted(new LensSource.Typed(26)), contradicted("26.0 mm was typed"));
        advised(contradicted(new LensSource.PictureData(26)), contradicted("the picture's data say 26.0 mm"));
        advised(contradicted(PHONE), contradicted("what was measured of \"Tomás' phone\" says 26.1 mm"));
        advised(
                new PhotoAdvice.CutOut(),
                "The photo seems to be cut out of a larger one: where the lens looked is not its middle, and its focal"
                        + " length can hardly be told. Use the photo as the camera took it, whole.");
        advised(
                new PhotoAdvice.PartDamaged(0.001),
                "The photo's file is damaged: 1 % of its picture is not as it was taken. Copy it from the camera or phone"
                        + " again, or take another.");
        advised(
                new PhotoAdvice.DamagedSomewhere(),
                "The photo's file is damaged, and where does not show. Copy it from the camera or phone again, or take"
                        + " another.");
    }

    private static PhotoAdvice contradicted(LensSource told) {
        return new PhotoAdvice.LensContradicted(told, 40.04);
    }

    private static String contradicted(String told) {
        return "Of the focal length " + told + ", but the ground looks as seen through 40.0 mm; that was used. Use the"
                + " photo as the camera took it, not cropped; see that the ground lies flat and is of the size that was"
                + " told.";
    }

    private static void advised(PhotoAdvice advice, String sentences) {
        NOTES.put(new TraceNote.Advised(advice), sentences);
    }

    static List<Map.Entry<TraceNote, String>> notes() {
        return new ArrayList<>(NOTES.entrySet());
    }

    @ParameterizedTest
    @MethodSource("notes")
    void notesAreWordedAsBefore(Map.Entry<TraceNote, String> note) {
        assertThat(TraceWording.sentence(note.getKey())).isEqualTo(note.getValue());
    }

    /** So that a kind that somebody adds is worded here, too. */
    @Test
    void everyKindIsAmongThem() {
        assertThat(NOTES.keySet().stream().<Class<?>>map(TraceNote::getClass).distinct())
                .containsExactlyInAnyOrder(TraceNote.class.getPermittedSubclasses());
        assertThat(NOTES.keySet().stream()
                        .filter(TraceNote.Advised.class::isInstance)
                        .<Class<?>>map(
                                note -> ((TraceNote.Advised) note).advice().getClass())
                        .distinct())
                .containsExactlyInAnyOrder(PhotoAdvice.class.getPermittedSubclasses());
    }

    @Test
    void linesOverThePhotoAreLabelledAsBefore() {
        assertThat(TraceWording.label(new GroundLabel.SheetSquares("A4", 9.97), MeasureUnit.MILLIMETRE))
                .isEqualTo("A4 sheet: each square is 10.0 mm");
        assertThat(TraceWording.label(new GroundLabel.Ruling(12.7), MeasureUnit.MILLIMETRE))
                .isEqualTo("each square is 12.7 mm (1/2 in)");
        assertThat(TraceWording.label(new GroundLabel.UnknownRuling(), MeasureUnit.MILLIMETRE))
                .isEqualTo("how far apart are these lines?");
        assertThat(TraceWording.label(new GroundLabel.Rectangle(297, 210), MeasureUnit.MILLIMETRE))
                .isEqualTo("297.0 mm by 210.0 mm");
        assertThat(GroundLabel.class.getPermittedSubclasses()).hasSize(4);
    }

    @ParameterizedTest
    @EnumSource
    void everySourceOfErrorHasACauseAndARemedy(ErrorSource.Known source) {
        assertThat(TraceWording.cause(source)).matches("[a-z].*[a-z]");
        assertThat(TraceWording.remedy(source)).matches("[A-Z].*[a-z]\\.");
    }

    @Test
    void errorIsToldWithItsGreatestParts() {
        ErrorBudget.Part handle = new ErrorBudget.Part(ErrorSource.Known.HANDLE_THICKNESS, 0.305);
        ErrorBudget.Part free = new ErrorBudget.Part(new ErrorSource.FreeText("the moon", "Wait."), 0.2);
        ErrorBudget.Part edge = new ErrorBudget.Part(ErrorSource.Known.EDGE_LOCALIZATION, 0.1);
        ErrorBudget.Part scale = new ErrorBudget.Part(ErrorSource.Known.GROUND_SCALE, 0.05);
        assertThat(TraceWording.sentences(
                        new ErrorBudget(0.38, List.of(handle, free, edge, scale)), MeasureUnit.MILLIMETRE))
                .isEqualTo(
                        "Of 100 places on the outline, 95 lie within 0.38 mm of the true one. Most of that comes from the"
                                + " thickness of the handle (0.31 mm), then the moon (0.20 mm), then finding the edge in the"
                                + " picture (0.10 mm). To be surer: Measure the handle at its thickest with a caliper, and"
                                + " photograph from farther away.");
        assertThat(TraceWording.sentences(new ErrorBudget(0, List.of()), MeasureUnit.MILLIMETRE))
                .isEqualTo("Of 100 places on the outline, 95 lie within 0.00 mm of the true one.");
    }

    /** {@link String#format} is what wrote these numbers before. */
    @Property
    void numbersAreRoundedAsByStringFormat(@ForAll @DoubleRange(min = 0, max = 5000) double mm) {
        assertThat(TraceWording.sentences(new ErrorBudget(mm, List.of()), MeasureUnit.MILLIMETRE))
                .isEqualTo(String.format(
                        Locale.ROOT, "Of 100 places on the outline, 95 lie within %.2f mm of the true one.", mm));
    }

    /** An apostrophe that is not doubled would swallow what follows it. */
    @Test
    void apostrophesAreDoubled() {
        ResourceBundle bundle = ResourceBundle.getBundle("weltwright.wording.messages", Locale.ROOT);
        bundle.keySet()
                .forEach(key -> assertThat(bundle.getString(key).replace("''", ""))
                        .as(key)
                        .doesNotContain("'"));
    }
}
