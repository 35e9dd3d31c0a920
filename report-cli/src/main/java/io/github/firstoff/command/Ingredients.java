package io.github.firstoff.command;

import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.Manifest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a sheet is made from: files by what they are read as, in their order, and the choices that change it. A command line gives them, and the
 * manifest of a sheet gives them again.
 *
 * @param files the files
 * @param options choices by name
 */
record Ingredients(List<Named> files, Map<String, String> options) {
    /** Nothing yet. */
    static final Ingredients NONE = new Ingredients(List.of(), Map.of());

    Ingredients {
        files = List.copyOf(files);
        options = Collections.unmodifiableMap(new LinkedHashMap<>(options));
    }

    /**
     * A file by its name.
     *
     * @param role what it is read as
     * @param name its name
     */
    record Named(Role role, String name) {}

    /** Those of a sheet. */
    static Ingredients of(Manifest manifest) {
        return new Ingredients(
                manifest.inputs().stream()
                        .map(file -> new Named(file.role(), file.name()))
                        .toList(),
                manifest.options());
    }

    /** These and one more file. */
    Ingredients with(Role role, Object name) {
        List<Named> more = new ArrayList<>(files);
        more.add(new Named(role, name.toString()));
        return new Ingredients(more, options);
    }

    /** These and one more file, if there is one. */
    Ingredients with(Role role, Optional<?> name) {
        return name.map(given -> with(role, (Object) given.toString())).orElse(this);
    }

    /** These and more choices. */
    Ingredients choosing(Map<String, String> more) {
        Map<String, String> all = new LinkedHashMap<>(options);
        all.putAll(more);
        return new Ingredients(files, all);
    }

    /** The files, as far as they are files and not standard input. */
    List<Path> paths() {
        return files.stream()
                .map(Named::name)
                .filter(name -> !name.equals(Inputs.STANDARD_INPUT))
                .map(Path::of)
                .toList();
    }

    /** The names of the files of one kind. */
    List<String> all(Role role) {
        return files.stream()
                .filter(file -> file.role() == role)
                .map(Named::name)
                .toList();
    }

    /** The name of the first file of one kind. */
    Optional<String> first(Role role) {
        return all(role).stream().findFirst();
    }
}
