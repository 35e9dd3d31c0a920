package io.github.firstoff.command;

import java.lang.reflect.Constructor;
import java.util.Arrays;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Gives each command the console it speaks through. */
final class CommandFactory implements IFactory {
    private final Console console;
    private final IFactory fallback = CommandLine.defaultFactory();

    CommandFactory(Console console) {
        this.console = console;
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        if (Arrays.stream(type.getDeclaredConstructors()).anyMatch(CommandFactory::takesTheConsole)) {
            return type.getDeclaredConstructor(Console.class).newInstance(console);
        }
        return fallback.create(type);
    }

    private static boolean takesTheConsole(Constructor<?> constructor) {
        return Arrays.equals(constructor.getParameterTypes(), new Class<?>[] {Console.class});
    }
}
