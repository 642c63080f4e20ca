package weltwright.wording;

import weltwright.message.Messages;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;
import weltwright.units.MeasureUnit;

/** Words the advice on a photo: what makes it hard to trace, and how to take a better one. */
public final class PhotoWording {
    /** Length of the example knife in the sentence on a photo from too near. */
    private static final double EXAMPLE_KNIFE_MM = 200;

    /** Error of half the handle's thickness in that example. */
    private static final double EXAMPLE_HEIGHT_ERROR_MM = 0.5;

    private static final SentencesByType<PhotoAdvice> ADVICE = new SentencesByType<PhotoAdvice>()
            .add(
                    PhotoAdvice.TooNear.class,
                    (a, in) -> findingAndRemedy(
                            in,
                            "photo.too-near",
                            a.distanceMm(),
                            EXAMPLE_HEIGHT_ERROR_MM * EXAMPLE_KNIFE_MM / a.distanceMm(),
                            a.enoughMm()))
            .add(PhotoAdvice.TooSlanted.class, (a, in) -> findingAndRemedy(in, "photo.too-slanted", a.degrees()))
            .add(PhotoAdvice.Blurred.class, (a, in) -> findingAndRemedy(in, "photo.blurred", a.smearPx(), a.smearMm()))
            .add(
                    PhotoAdvice.BlurredAtUnknownScale.class,
                    (a, in) -> findingAndRemedy(in, "photo.blurred-at-unknown-scale", a.smearPx()))
            .add(PhotoAdvice.TooDark.class, (a, in) -> findingAndRemedy(in, "photo.too-dark", a.whiteLevel()))
            .add(
                    PhotoAdvice.Overexposed.class,
                    (a, in) -> findingAndRemedy(in, "photo.overexposed", 100 * a.burntPart()))
            .add(PhotoAdvice.Hazy.class, (a, in) -> findingAndRemedy(in, "photo.hazy", a.blackLevel(), a.whiteLevel()))
            .add(PhotoAdvice.FaintPrint.class, (a, in) -> findingAndRemedy(in, "photo.faint-print", 100 * a.contrast()))
            .add(
                    PhotoAdvice.GroundHidden.class,
                    (a, in) -> findingAndRemedy(in, "photo.ground-hidden", a.seen(), a.all()))
            .add(PhotoAdvice.KnifeReachesOver.class, (a, in) -> findingAndRemedy(in, "photo.knife-reaches-over"))
            .add(PhotoAdvice.TooCoarse.class, (a, in) -> findingAndRemedy(in, "photo.too-coarse", a.pxPerMm()))
            .add(
                    PhotoAdvice.LensContradicted.class,
                    (a, in) -> findingAndRemedy(
                            in, "photo.lens-contradicted", PhotoWording.KNOWN_LENSES.of(a.told(), in), a.seen35mm()))
            .add(PhotoAdvice.CutOut.class, (a, in) -> findingAndRemedy(in, "photo.cut-out"))
            .add(
                    PhotoAdvice.PartDamaged.class,
                    (a, in) -> findingAndRemedy(in, "photo.part-damaged", Math.max(1, 100 * a.part())))
            .add(PhotoAdvice.DamagedSomewhere.class, (a, in) -> findingAndRemedy(in, "photo.damaged-somewhere"));

    /** Clauses within the sentence of {@code photo.lens-contradicted}. */
    private static final SentencesByType<LensSource> KNOWN_LENSES = new SentencesByType<LensSource>()
            .add(LensSource.GroundAlone.class, (s, in) -> in.text("lens.ground-alone.told"))
            .add(LensSource.Typed.class, (s, in) -> in.text("lens.typed.told", s.focal35mm()))
            .add(LensSource.PictureData.class, (s, in) -> in.text("lens.picture-data.told", s.focal35mm()))
            .add(LensSource.Phone.class, (s, in) -> in.text("lens.phone.told", s.name(), s.focal35mm()));

    private PhotoWording() {}

    /** The advice in two sentences, with lengths in mm: what was found, and what to do. */
    public static String sentences(PhotoAdvice advice) {
        return sentences(advice, MeasureUnit.MILLIMETRE);
    }

    /** The advice in two sentences: what was found, and what to do. */
    public static String sentences(PhotoAdvice advice, MeasureUnit unit) {
        return sentences(advice, Messages.of(PhotoWording.class).withUnit(unit));
    }

    static String sentences(PhotoAdvice advice, Messages in) {
        return ADVICE.of(advice, in);
    }

    private static String findingAndRemedy(Messages in, String key, Object... values) {
        return in.text(key + ".seen", values) + " " + in.text(key + ".remedy", values);
    }
}
