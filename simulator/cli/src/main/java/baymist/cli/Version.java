package baymist.cli;

import picocli.CommandLine.IVersionProvider;

/** Version of the jar, or a note that this is no jar. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {"baymist " + text()};
    }

    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "(development build)" : version;
    }
}
