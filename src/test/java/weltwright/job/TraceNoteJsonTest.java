package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;

class TraceNoteJsonTest {

    /** Each kind of note, and of what a note may hold. */
    static List<TraceNote> notes() {
        Stream<TraceNote> notes = kinds(TraceNote.class);
        Stream<TraceNote> advice = kinds(PhotoAdvice.class).map(TraceNote.Advised::new);
        Stream<TraceNote> lenses = kinds(LensSource.class).map(source -> new TraceNote.FocalLength(26, 0.5, source));
        return Stream.of(notes, advice, lenses).flatMap(all -> all).toList();
    }

    @ParameterizedTest
    @MethodSource("notes")
    void readsWhatItWrote(TraceNote note) throws JsonProcessingException {
        String written = JobFile.JSON.writerFor(TraceNote.class).writeValueAsString(note);
        assertThat(JobFile.JSON.readValue(written, TraceNote.class)).isEqualTo(note);
    }

    /** Names in the file are the format of a version, and do not follow those of the program. */
    @Test
    void standsInAFileByTheNamesOfItsFormat() throws JsonProcessingException {
        TraceNote focal = new TraceNote.FocalLength(26.5, 0.25, new LensSource.Phone("Tomás", 5, 26));
        assertThat(JobFile.JSON.readTree("""
                        {"kind": "focal_length", "focal35mm": 26.5, "error95_percent": 0.25,
                         "source": {"kind": "phone", "name": "Tomás", "views": 5, "focal35mm": 26.0}}"""))
                .isEqualTo(JobFile.JSON.readTree(
                        JobFile.JSON.writerFor(TraceNote.class).writeValueAsString(focal)));
        TraceNote near = new TraceNote.Advised(new PhotoAdvice.TooNear(250.5, 420.5));
        assertThat(JobFile.JSON.readTree("""
                        {"kind": "advised",
                         "advice": {"kind": "too_near", "distance_mm": 250.5, "enough_mm": 420.5}}"""))
                .isEqualTo(JobFile.JSON.readTree(
                        JobFile.JSON.writerFor(TraceNote.class).writeValueAsString(near)));
    }

    private static <T> Stream<T> kinds(Class<T> sealed) {
        return Arrays.stream(sealed.getPermittedSubclasses()).map(kind -> sealed.cast(filled(kind)));
    }

    private static Object filled(Class<?> kind) {
        Class<?>[] types = Arrays.stream(kind.getRecordComponents())
                .map(RecordComponent::getType)
                .toArray(Class<?>[]::new);
        try {
            return kind.getDeclaredConstructor(types)
                    .newInstance(
                            Arrays.stream(types).map(TraceNoteJsonTest::any).toArray());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Object any(Class<?> type) {
        if (type == double.class) {
            return 1 / 3.0;
        }
        if (type == int.class) {
            return 12;
        }
        if (type == LensSource.class) {
            return new LensSource.Typed(26);
        }
        return type == PhotoAdvice.class ? new PhotoAdvice.CutOut() : "“A4”, näher";
    }
}
