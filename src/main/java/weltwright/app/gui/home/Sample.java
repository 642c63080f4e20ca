package weltwright.app.gui.home;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.ImageIcon;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/** The sample knives to try the program with: invented, as their customers are. */
public enum Sample {
    DROP_POINT("drop-point", "Anouk", 19, 3.5, SheathKind.FOLDED),
    LEAF_BLADE("leaf-blade", "Tomas", 22, 4.2, SheathKind.PANELS);

    private final String file;
    private final String customer;
    private final double handleMm;
    private final double spineMm;
    private final SheathKind kind;

    Sample(String file, String customer, double handleMm, double spineMm, SheathKind kind) {
        this.file = file;
        this.customer = customer;
        this.handleMm = handleMm;
        this.spineMm = spineMm;
        this.kind = kind;
    }

    /** Returns the key of its words. */
    String key() {
        return "sample." + file;
    }

    /** Returns its photo cut to 16:9, 320 px wide. */
    ImageIcon picture() {
        return new ImageIcon(Objects.requireNonNull(Sample.class.getResource(file + "-small.jpg")));
    }

    /** Returns a new job with the photo and the measures of the knife, not yet traced. */
    public Job job(LocalDate today) {
        Job empty = Job.begin(today);
        Job photographed = empty.withSettings(empty.settings()
                        .withHandleThicknessMm(OptionalDouble.of(handleMm))
                        .withSpineThicknessMm(OptionalDouble.of(spineMm)))
                .withPhoto(photo())
                .withSpec(SheathSpec.standard(kind));
        return photographed.withOrder(customer, file.replace('-', ' '), Optional.empty(), "");
    }

    private Photo photo() {
        try (InputStream in = Objects.requireNonNull(Sample.class.getResourceAsStream(file + ".jpg"))) {
            return Photo.of(file + ".jpg", in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e); // it is in the program's own jar
        }
    }
}
