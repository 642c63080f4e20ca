package weltwright.wording;

import static weltwright.wording.Messages.text;

import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;

/** What makes a photo hard to trace, and how to take a better one. */
public final class PhotoWording {
    /** Length of the knife for which the error of a photo from too near is told; it is in the sentence. */
    private static final double KNIFE_MM = 200;

    /** Error of half the handle's thickness for which that is told; it is in the sentence. */
    private static final double HEIGHT_ERROR_MM = 0.5;

    private static final SentencesByType<PhotoAdvice> ADVICE = new SentencesByType<PhotoAdvice>()
            .add(
                    PhotoAdvice.TooNear.class,
                    a -> both(
                            "photo.too-near",
                            a.distanceMm(),
                            HEIGHT_ERROR_MM * KNIFE_MM / a.distanceMm(),
                            a.enoughMm()))
            .add(PhotoAdvice.TooSlanted.class, a -> both("photo.too-slanted", a.degrees()))
            .add(PhotoAdvice.Blurred.class, a -> both("photo.blurred", a.smearPx(), a.smearMm()))
            .add(PhotoAdvice.BlurredAtUnknownScale.class, a -> both("photo.blurred-at-unknown-scale", a.smearPx()))
            .add(PhotoAdvice.TooDark.class, a -> both("photo.too-dark", a.whiteLevel()))
            .add(PhotoAdvice.Overexposed.class, a -> both("photo.overexposed", 100 * a.burntPart()))
            .add(PhotoAdvice.Hazy.class, a -> both("photo.hazy", a.blackLevel(), a.whiteLevel()))
            .add(PhotoAdvice.FaintPrint.class, a -> both("photo.faint-print", 100 * a.contrast()))
            .add(PhotoAdvice.GroundHidden.class, a -> both("photo.ground-hidden", a.seen(), a.all()))
            .add(PhotoAdvice.KnifeReachesOver.class, a -> both("photo.knife-reaches-over"))
            .add(PhotoAdvice.TooCoarse.class, a -> both("photo.too-coarse", a.pxPerMm()))
            .add(
                    PhotoAdvice.LensContradicted.class,
                    a -> both("photo.lens-contradicted", PhotoWording.TOLD.of(a.told()), a.seen35mm()))
            .add(PhotoAdvice.CutOut.class, a -> both("photo.cut-out"))
            .add(PhotoAdvice.PartDamaged.class, a -> both("photo.part-damaged", Math.max(1, 100 * a.part())))
            .add(PhotoAdvice.DamagedSomewhere.class, a -> both("photo.damaged-somewhere"));

    /** To stand in "Of the focal length ..., but the ground looks as seen through ...". */
    private static final SentencesByType<LensSource> TOLD = new SentencesByType<LensSource>()
            .add(LensSource.GroundAlone.class, s -> text("lens.ground-alone.told"))
            .add(LensSource.Typed.class, s -> text("lens.typed.told", s.focal35mm()))
            .add(LensSource.PictureData.class, s -> text("lens.picture-data.told", s.focal35mm()))
            .add(LensSource.Phone.class, s -> text("lens.phone.told", s.name(), s.focal35mm()));

    private PhotoWording() {}

    /** Two sentences: what was found, and what to do. */
    public static String sentences(PhotoAdvice advice) {
        return ADVICE.of(advice);
    }

    private static String both(String key, Object... values) {
        return text(key + ".seen", values) + " " + text(key + ".remedy", values);
    }
}
