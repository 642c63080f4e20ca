package weltwright.job;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;

/**
 * Jackson annotations for the notes of a trace in a job file: an object with its {@code kind} and its values by name. A
 * new kind or a changed value needs a higher {@link JobDocument#VERSION}.
 */
final class TraceNoteJson {
    private TraceNoteJson() {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonNaming(SnakeCaseStrategy.class)
    @JsonSubTypes({
        @JsonSubTypes.Type(name = "sheet_found", value = TraceNote.SheetFound.class),
        @JsonSubTypes.Type(name = "ruling_found", value = TraceNote.RulingFound.class),
        @JsonSubTypes.Type(name = "paper_found", value = TraceNote.PaperFound.class),
        @JsonSubTypes.Type(name = "paper_size_from_proportions", value = TraceNote.PaperSizeFromProportions.class),
        @JsonSubTypes.Type(name = "rectangle_by_edges", value = TraceNote.RectangleByEdges.class),
        @JsonSubTypes.Type(name = "rectangle_by_corners", value = TraceNote.RectangleByCorners.class),
        @JsonSubTypes.Type(name = "focal_length", value = TraceNote.FocalLength.class),
        @JsonSubTypes.Type(name = "camera_position", value = TraceNote.CameraPosition.class),
        @JsonSubTypes.Type(name = "advised", value = TraceNote.Advised.class),
        @JsonSubTypes.Type(name = "free_text", value = TraceNote.FreeText.class)
    })
    interface Note {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonNaming(SnakeCaseStrategy.class)
    @JsonSubTypes({
        @JsonSubTypes.Type(name = "too_near", value = PhotoAdvice.TooNear.class),
        @JsonSubTypes.Type(name = "too_slanted", value = PhotoAdvice.TooSlanted.class),
        @JsonSubTypes.Type(name = "blurred", value = PhotoAdvice.Blurred.class),
        @JsonSubTypes.Type(name = "blurred_at_unknown_scale", value = PhotoAdvice.BlurredAtUnknownScale.class),
        @JsonSubTypes.Type(name = "too_dark", value = PhotoAdvice.TooDark.class),
        @JsonSubTypes.Type(name = "overexposed", value = PhotoAdvice.Overexposed.class),
        @JsonSubTypes.Type(name = "hazy", value = PhotoAdvice.Hazy.class),
        @JsonSubTypes.Type(name = "faint_print", value = PhotoAdvice.FaintPrint.class),
        @JsonSubTypes.Type(name = "ground_hidden", value = PhotoAdvice.GroundHidden.class),
        @JsonSubTypes.Type(name = "knife_reaches_over", value = PhotoAdvice.KnifeReachesOver.class),
        @JsonSubTypes.Type(name = "too_coarse", value = PhotoAdvice.TooCoarse.class),
        @JsonSubTypes.Type(name = "lens_contradicted", value = PhotoAdvice.LensContradicted.class),
        @JsonSubTypes.Type(name = "cut_out", value = PhotoAdvice.CutOut.class),
        @JsonSubTypes.Type(name = "part_damaged", value = PhotoAdvice.PartDamaged.class),
        @JsonSubTypes.Type(name = "damaged_somewhere", value = PhotoAdvice.DamagedSomewhere.class)
    })
    interface Advice {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonNaming(SnakeCaseStrategy.class)
    @JsonSubTypes({
        @JsonSubTypes.Type(name = "ground_alone", value = LensSource.GroundAlone.class),
        @JsonSubTypes.Type(name = "typed", value = LensSource.Typed.class),
        @JsonSubTypes.Type(name = "picture_data", value = LensSource.PictureData.class),
        @JsonSubTypes.Type(name = "phone", value = LensSource.Phone.class)
    })
    interface Source {}
}
