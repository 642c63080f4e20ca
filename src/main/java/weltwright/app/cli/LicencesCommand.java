package weltwright.app.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.error.UserFacingException;
import weltwright.licence.LicensedComponent;
import weltwright.licence.ThirdPartyLicences;
import weltwright.message.Messages;

@Command(name = "licences", mixinStandardHelpOptions = true)
final class LicencesCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(LicencesCommand.class);

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "NAME", arity = "0..1", descriptionKey = "name")
    private @Nullable String name;

    @Override
    public void run() {
        PrintWriter out = spec.commandLine().getOut();
        if (name == null) {
            ThirdPartyLicences.all().forEach(component -> out.println(heading(component)));
        } else {
            matching(name).forEach(component -> out.println(heading(component) + "\n\n" + component.text() + "\n"));
        }
    }

    private static List<LicensedComponent> matching(String part) {
        List<LicensedComponent> found = ThirdPartyLicences.all().stream()
                .filter(component -> component.name().toLowerCase(Locale.ROOT).contains(part.toLowerCase(Locale.ROOT)))
                .toList();
        if (found.isEmpty()) {
            throw new UserFacingException(
                    TEXTS.text("licences-command.no-library-or-font-that", part),
                    TEXTS.text("licences-command.weltwright-licences-lists-them-all"));
        }
        return found;
    }

    private static String heading(LicensedComponent component) {
        return String.format(Locale.ROOT, "%-32s %-16s %s", component.name(), component.version(), component.licence());
    }
}
