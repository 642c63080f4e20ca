package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.HandleSection;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Throat;
import weltwright.trace.Trace;
import weltwright.trace.ground.GroundChoice;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;

class JobMigrationsTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("anouk.wwj");
    }

    /**
     * As version 7 wrote it: notes as sentences, the parts of the error by the words for them, and no choice for
     * guards, which were never let in.
     */
    @Test
    void readsWhatTheSeventhVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionSevenWroteIt(json, 7));
        assertThat(JobFile.read(file)).isEqualTo(fullOfVersionEight());
        EditedJobFile.write(file, json -> {
            asVersionSevenWroteIt(json, 7);
            ((ArrayNode) json.at("/trace/error_parts"))
                    .addObject()
                    .put("cause", "finding the edge in the picture")
                    .put("error95", 0.125)
                    .put("remedy", "Use flat light and a sharp picture in which the sheet fills the frame.");
        });
        assertThat(JobFile.read(file).trace().orElseThrow().error().parts())
                .endsWith(new ErrorBudget.Part(ErrorSource.Known.EDGE_LOCALIZATION, 0.125));
    }

    /** As version 8 wrote it: without the shape of the handle's section and without marks on the photo. */
    @Test
    void readsWhatTheEighthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionEightWroteIt(json, 8));
        assertThat(JobFile.read(file)).isEqualTo(fullOfVersionEight());
    }

    /** As version 9 wrote it: without what was typed, and never without the thicknesses of handle and spine. */
    @Test
    void readsWhatTheNinthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionNineWroteIt(json, 9));
        assertThat(JobFile.read(file))
                .isEqualTo(JobBuilder.builder(fullOfVersionThirteen())
                        .typed(Map.of())
                        .cutting(CuttingPlan.NONE)
                        .workDone(Map.of())
                        .finished(Optional.empty())
                        .build());
    }

    private static ObjectNode asVersionNineWroteIt(ObjectNode json, int version) {
        json.remove("typed");
        return asVersionTenWroteIt(json, version);
    }

    /** As version 10 wrote it: without leather to cut from. */
    @Test
    void readsWhatTheTenthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionTenWroteIt(json, 10));
        assertThat(JobFile.read(file))
                .isEqualTo(fullOfVersionThirteen()
                        .withCutting(CuttingPlan.NONE)
                        .withoutWorkDone()
                        .withFinished(Optional.empty()));
    }

    private static ObjectNode asVersionTenWroteIt(ObjectNode json, int version) {
        json.remove("cutting");
        return asVersionElevenWroteIt(json, version);
    }

    /** As version 11 wrote it: without ticks in the order of work. */
    @Test
    void readsWhatTheEleventhVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionElevenWroteIt(json, 11));
        assertThat(JobFile.read(file))
                .isEqualTo(fullOfVersionThirteen().withoutWorkDone().withFinished(Optional.empty()));
    }

    private static ObjectNode asVersionElevenWroteIt(ObjectNode json, int version) {
        json.remove("work_done");
        return asVersionTwelveWroteIt(json, version);
    }

    /** As version 12 wrote it: without the day on which the sheath was done. */
    @Test
    void readsWhatTheTwelfthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionTwelveWroteIt(json, 12));
        assertThat(JobFile.read(file)).isEqualTo(fullOfVersionThirteen().withFinished(Optional.empty()));
    }

    private static ObjectNode asVersionTwelveWroteIt(ObjectNode json, int version) {
        json.remove("finished");
        return asVersionThirteenWroteIt(json, version);
    }

    /** As version 13 wrote it: without the thickness of the thread. */
    @Test
    void readsWhatTheThirteenthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionThirteenWroteIt(json, 13));
        assertThat(JobFile.read(file)).isEqualTo(fullOfVersionThirteen());
    }

    private static ObjectNode asVersionThirteenWroteIt(ObjectNode json, int version) {
        ((ObjectNode) json.get("sheath")).remove("thread");
        return json.put("version", version);
    }

    private static Job fullOfVersionThirteen() {
        Job full = TestJobs.full();
        SheathSpec spec = full.spec();
        return full.withSpec(spec.withStitching(spec.stitching().withThreadMm(OptionalDouble.empty())));
    }

    private static Job fullOfVersionEight() {
        Job full = fullOfVersionThirteen();
        return JobBuilder.builder(full)
                .typed(Map.of())
                .cutting(CuttingPlan.NONE)
                .workDone(Map.of())
                .finished(Optional.empty())
                .settings(
                        full.settings().withHandleSection(HandleSection.UNKNOWN).withMarks(List.of()))
                .build();
    }

    private static ObjectNode asVersionEightWroteIt(ObjectNode json, int version) {
        ((ObjectNode) json.get("measured")).remove(List.of("handle_section", "marks"));
        return asVersionNineWroteIt(json, version);
    }

    private static ObjectNode asVersionSevenWroteIt(ObjectNode json, int version) {
        for (JsonNode part : json.at("/trace/error_parts")) {
            ((ObjectNode) part).setAll((ObjectNode) part.get("free_text"));
            ((ObjectNode) part).remove(List.of("source", "free_text"));
        }
        ArrayNode notes = (ArrayNode) json.at("/trace/notes");
        for (int i = 0; i < notes.size(); i++) {
            notes.set(i, notes.get(i).get("sentence"));
        }
        ((ObjectNode) json.get("sheath")).remove("guard_opening");
        return asVersionEightWroteIt(json, version);
    }

    /** As version 6 wrote it: without the thicknesses along the knife, and with every strap of 5/8 in. */
    @Test
    void readsWhatTheSixthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionSixWroteIt(json, 6));
        assertThat(JobFile.read(file)).isEqualTo(fullOfVersionEight());
    }

    private static ObjectNode asVersionSixWroteIt(ObjectNode json, int version) {
        ((ObjectNode) json.get("measured")).remove("thickness_along");
        ((ObjectNode) json.get("sheath")).remove(List.of("belt_strap_width", "belt_strap_leather"));
        ((ObjectNode) json.at("/sheath/strap")).remove(List.of("width", "leather"));
        return asVersionSevenWroteIt(json, version);
    }

    /**
     * As version 5 wrote it: that somebody saw which side is the edge was told by the sides being exchanged, and only
     * so.
     */
    @Test
    void readsWhatTheFifthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionFiveWroteIt(json, 5));
        assertThat(JobFile.read(file)).isEqualTo(fullOfVersionEight());
        EditedJobFile.write(file, json -> {
            asVersionFiveWroteIt(json, 5);
            ((ObjectNode) json.get("outline")).put("spine_side", "left");
        });
        assertThat(JobFile.read(file).spineOnLeft()).isEmpty();
        assertThat(JobFile.read(file).asksForEdge()).isTrue();
        EditedJobFile.write(
                file, json -> asVersionFiveWroteIt(json, 5).putNull("trace").putNull("outline"));
        assertThat(JobFile.read(file).spineOnLeft()).isEmpty();
    }

    private static ObjectNode asVersionFiveWroteIt(ObjectNode json, int version) {
        json.remove("spine_told");
        return asVersionSixWroteIt(json, version);
    }

    /** As version 4 wrote it: without what is claimed for the landmarks. */
    @Test
    void readsWhatTheFourthVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> asVersionFourWroteIt(json, 4));
        Job full = fullOfVersionThirteen();
        Job job = JobFile.read(file);
        assertThat(job.silhouette()).isEqualTo(full.silhouette());
        assertThat(job.trace().orElseThrow().landmarkError())
                .isEqualTo(new LandmarkUncertainty(
                        full.trace().orElseThrow().error().error95Mm(), 1));
        assertThat(job.asksForEdge()).isFalse();
    }

    private static void asVersionFourWroteIt(ObjectNode json, int version) {
        asVersionFiveWroteIt(json, version);
        ((ObjectNode) json.get("trace")).remove(List.of("blade_length95", "edge_sure"));
    }

    /** As version 3 wrote it: without the phone and the maker's own hardware. */
    @Test
    void readsWhatTheThirdVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> {
            asVersionFourWroteIt(json, 3);
            ((ObjectNode) json.get("measured")).remove("phone");
            ((ObjectNode) json.get("sheath")).remove(List.of("drain_eyelet", "hardware"));
        });
        Job full = fullOfVersionThirteen();
        Job job = JobFile.read(file);
        assertThat(job.settings()).isEqualTo(fullOfVersionEight().settings().withPhone(Optional.empty()));
        assertThat(job.trace().map(Trace::silhouette)).isEqualTo(full.trace().map(Trace::silhouette));
        assertThat(job.spec())
                .usingRecursiveComparison()
                .ignoringFields("drain.eyelet", "hardware")
                .isEqualTo(full.spec());
        assertThat(job.spec().drain().eyelet()).isFalse();
    }

    /** As version 2 wrote it: without the fields that came after it. */
    @Test
    void readsWhatTheSecondVersionWrote() throws IOException {
        EditedJobFile.write(file, JobMigrationsTest::asVersionTwoWroteIt);
        Job full = fullOfVersionThirteen();
        Job job = JobFile.read(file);
        assertThat(job.silhouette()).isEqualTo(full.silhouette());
        assertThat(job.calipers()).isEqualTo(full.calipers());
        assertThat(job.settings()).isEqualTo(fullOfVersionEight().settings().withPhone(Optional.empty()));
        assertThat(job.shaping())
                .isEqualTo(CrossSectionShape.usual(full.shaping().edgeThicknessMm()));
        assertThat(job.spec().kind()).isEqualTo(full.spec().kind());
        assertThat(job.spec().carry())
                .isEqualTo(new CarryPosition(full.spec().carry().hand(), CarryPosition.Edge.FORWARD, 0));
        assertThat(job.spec().leather().thicknessMm())
                .isEqualTo(full.spec().leather().thicknessMm());
        assertThat(job.spec().throat()).isEqualTo(new Throat(Throat.Shape.CURVED, 4));
        assertThat(job.spec().belt().style()).isEqualTo(BeltAttachment.Style.TAIL);
        assertThat(job.spec().strap()).isEmpty();
        assertThat(job.spec().drain().eyelet()).isFalse();
        assertThat(job.spec().hardware().fasteners())
                .contains(new Fastener("double-cap rivet, 9 mm, long post", Hardware.Kind.RIVET, 3.1, 9, 7, 9.5));
    }

    private static void asVersionTwoWroteIt(ObjectNode json) {
        asVersionFourWroteIt(json, 2);
        ((ObjectNode) json.get("measured")).remove(List.of("grind", "grind_height", "handle_squareness", "phone"));
        ((ObjectNode) json.get("sheath"))
                .retain(
                        "kind",
                        "hand",
                        "leather_thickness",
                        "welt_layers",
                        "stitch_margin",
                        "welt_inner_margin",
                        "ease",
                        "pitch",
                        "neutral_factor",
                        "belt_width",
                        "belt_thickness",
                        "handle_depth",
                        "drain_hole");
    }

    /** As version 1 wrote it: without the fields that came after it. */
    @Test
    void readsWhatTheFirstVersionWrote() throws IOException {
        EditedJobFile.write(file, json -> {
            asVersionTwoWroteIt(json);
            json.put("version", 1).remove(List.of("calipers", "to_look_at"));
            ((ObjectNode) json.get("trace")).remove("unsure");
            ((ObjectNode) json.get("measured")).remove("ground");
        });
        Job job = JobFile.read(file);
        assertThat(job.calipers()).isEmpty();
        assertThat(job.settings().ground()).isEqualTo(new GroundChoice.Sheet());
        assertThat(job.unsure()).isEmpty();
        assertThat(job.trace().orElseThrow().unsure()).isEmpty();
        assertThat(job.silhouette()).isEqualTo(fullOfVersionThirteen().silhouette());
        assertThat(job.spec().strap()).isEmpty();
    }
}
