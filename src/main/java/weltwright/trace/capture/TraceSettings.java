package weltwright.trace.capture;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.camera.lens.CalibratedLens;
import weltwright.error.UserFacingException;
import weltwright.knife.HandleSection;
import weltwright.knife.ThicknessProfile;
import weltwright.message.Messages;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.PrintScale;

/**
 * The user's settings for the trace of a photo.
 *
 * @param handleThicknessMm greatest thickness of the handle across the flats, by caliper; empty until measured
 * @param spineThicknessMm thickness of the blade at the spine by the heel, by caliper; empty until measured
 * @param tipDropMm how much lower the tip's mid-plane lies than the heel's; mostly 0
 * @param focal35mm focal length in 35 mm terms; empty to take it from Exif or from the ground in perspective
 * @param sheetScale measured length of the sheet's two bars over their nominal length
 * @param ground choice of ground
 * @param phone calibrated lens, without its camera's name, which must not get into a job; {@code focal35mm} takes
 *     precedence
 * @param thickness thicknesses measured elsewhere along the knife
 * @param handleSection shape of the handle, cut across
 * @param doubleEdged whether both sides of the blade are sharp
 * @param marks places of the photo at which the user told what is to be seen
 */
@RecordBuilder
public record TraceSettings(
        OptionalDouble handleThicknessMm,
        OptionalDouble spineThicknessMm,
        double tipDropMm,
        OptionalDouble focal35mm,
        PrintScale sheetScale,
        GroundChoice ground,
        Optional<CalibratedLens> phone,
        ThicknessProfile thickness,
        HandleSection handleSection,
        boolean doubleEdged,
        List<KnifeMark> marks)
        implements TraceSettingsBuilder.With {
    private static final Messages TEXTS = Messages.of(TraceSettings.class);

    /** Handle and spine of a common belt knife, assumed where the user asks for a result unmeasured; chosen by eye. */
    private static final double USUAL_HANDLE_MM = 19;

    private static final double USUAL_SPINE_MM = 3.5;

    public TraceSettings {
        marks = List.copyOf(marks);
        phone = phone.map(CalibratedLens::withoutCamera);
    }

    /** Creates settings without a calibrated lens and without further thicknesses. */
    public TraceSettings(
            double handleThicknessMm,
            double spineThicknessMm,
            double tipDropMm,
            OptionalDouble focal35mm,
            PrintScale sheetScale,
            GroundChoice ground) {
        this(
                OptionalDouble.of(handleThicknessMm),
                OptionalDouble.of(spineThicknessMm),
                tipDropMm,
                focal35mm,
                sheetScale,
                ground,
                Optional.empty(),
                ThicknessProfile.NONE,
                HandleSection.UNKNOWN,
                false,
                List.of());
    }

    /** Creates settings for a knife on the printed reference sheet. */
    public TraceSettings(
            double handleThicknessMm,
            double spineThicknessMm,
            double tipDropMm,
            OptionalDouble focal35mm,
            PrintScale sheetScale) {
        this(handleThicknessMm, spineThicknessMm, tipDropMm, focal35mm, sheetScale, new GroundChoice.Sheet());
    }

    /** Returns settings without any measure of the knife, for a knife lying level on the given ground. */
    public static TraceSettings unmeasured(GroundChoice ground) {
        return new TraceSettings(0, 0, 0, OptionalDouble.empty(), PrintScale.TRUE, ground)
                .withHandleThicknessMm(OptionalDouble.empty())
                .withSpineThicknessMm(OptionalDouble.empty());
    }

    /** Returns whether the handle and the spine were measured. */
    public boolean isMeasured() {
        return handleThicknessMm.isPresent() && spineThicknessMm.isPresent();
    }

    /** Returns the settings with the usual thickness for handle and spine where they were not measured. */
    public TraceSettings assumingUsual() {
        return withHandleThicknessMm(OptionalDouble.of(handleThicknessMm.orElse(USUAL_HANDLE_MM)))
                .withSpineThicknessMm(OptionalDouble.of(spineThicknessMm.orElse(USUAL_SPINE_MM)));
    }

    /**
     * Returns the thickness of the handle.
     *
     * @throws UserFacingException if it was not measured
     */
    public double measuredHandleMm() {
        return handleThicknessMm.orElseThrow(() -> notMeasured("handle"));
    }

    /**
     * Returns the thickness of the spine.
     *
     * @throws UserFacingException if it was not measured
     */
    public double measuredSpineMm() {
        return spineThicknessMm.orElseThrow(() -> notMeasured("spine"));
    }

    private static UserFacingException notMeasured(String part) {
        return new UserFacingException(
                TEXTS.text("trace-settings.the-s-thickness-is-not", part),
                TEXTS.text("trace-settings.measure-it-with-a-caliper"));
    }

    /** Returns the settings for another photo on the same ground, without positions in this photo. */
    public TraceSettings elsewhere() {
        return withGround(ground.elsewhere()).withMarks(List.of());
    }
}
