package weltwright.app.cli;

import java.io.PrintWriter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.error.UserFacingException;
import weltwright.guide.GuidePage;
import weltwright.message.Messages;

@Command(name = "guide", mixinStandardHelpOptions = true)
final class GuideCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(GuideCommand.class);

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PAGE", arity = "0..1", descriptionKey = "page")
    private @Nullable String page;

    @Override
    public void run() {
        PrintWriter out = spec.commandLine().getOut();
        if (page == null) {
            for (GuidePage each : GuidePage.values()) {
                out.println(String.format(Locale.ROOT, "%-10s %s", each.id(), each.title()));
            }
            return;
        }
        String name = page;
        out.print(GuidePage.of(name)
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("guide-command.the-guide-has-no-page", name),
                        TEXTS.text("guide-command.weltwright-guide-lists-them-all")))
                .text(spec.usageMessage().width()));
    }
}
