package weltwright.app.gui.knife;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import weltwright.app.gui.model.BackgroundTask;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.knife.StandingPose;
import weltwright.knife.ThicknessProfile;
import weltwright.message.Messages;
import weltwright.trace.ProgressListener;
import weltwright.trace.thickness.ThicknessTracer;

/** Measures the thickness along the knife from a second photo, in which the knife stands on its spine or edge. */
public final class ThicknessPhotoAction {
    private static final Messages TEXTS = Messages.of(ThicknessPhotoAction.class);

    private static final String CAUTION = TEXTS.text("thickness-photo-action.tape-the-knife-s-edge");

    private final JobModel model;
    private final TaskQueue tasks;
    private final FileDialogs dialogs;
    private final Consumer<String> notifier;

    public ThicknessPhotoAction(JobModel model, TaskQueue tasks, FileDialogs dialogs, Consumer<String> notifier) {
        this.model = model;
        this.tasks = tasks;
        this.dialogs = dialogs;
        this.notifier = notifier;
    }

    /** Explains how to take the photo, asks for it, and stores the measured thickness in the job. */
    void choosePhoto() {
        Optional<StandingPose.Foot> foot = dialogs.askChoice(
                        TEXTS.text("thickness-photo-action.thickness-from-a-second-photo"),
                        CAUTION,
                        TEXTS.text("thickness-photo-action.its-spine"),
                        TEXTS.text("thickness-photo-action.its-edge"),
                        TEXTS.text("thickness-photo-action.cancel"))
                .filter(answer -> answer < StandingPose.Foot.values().length)
                .map(answer -> answer == 0 ? StandingPose.Foot.SPINE : StandingPose.Foot.EDGE);
        foot.flatMap(f -> dialogs.choosePhoto(TEXTS.text("thickness-photo-action.open-a-photo-of-the")))
                .ifPresent(file -> measure(file, foot.get()));
    }

    void measure(Path file, StandingPose.Foot foot) {
        Job job = model.job();
        notifier.accept("");
        tasks.submit(new BackgroundTask<ThicknessProfile>() {
            @Override
            public String title() {
                return TEXTS.text("thickness-photo-action.measuring-the-thickness");
            }

            @Override
            public ThicknessProfile doInBackground(ProgressListener progress) {
                return ThicknessTracer.trace(Photo.read(file), job.settings().elsewhere(), job.knife(), foot, progress);
            }

            @Override
            public void succeeded(ThicknessProfile profile) {
                model.change(now -> now.withSettings(now.settings().withThickness(profile)));
            }
        });
    }
}
