// What stands inside packages and no metafile knows of: compiled or copied in by those who made the package. `seen` is a place in an
// installed file that shows it, so that a package that changes what it brings fails tests/third-parties.test.ts.
const WASM = 'highs/build/highs.wasm';

export const INSIDE = [
  {
    within: '@svgdotjs/svg.js',
    name: 'core-js-pure',
    version: '3.49.0',
    licence: 'MIT',
    copyright: '© 2013–2025 Denis Pushkarev (zloirock.ru), 2025–2026 CoreJS Company (core-js.io). All rights reserved.',
    source: 'https://github.com/zloirock/core-js',
    texts: ['mit'],
    seen: ['@svgdotjs/svg.js/dist/svg.esm.js', 'core-js-pure@3.49.0'],
  },
  {
    within: 'pdfkit',
    name: 'Font metrics of Helvetica and Helvetica-Bold (PDF Core 14)',
    version: '4.1',
    licence: 'APAFML',
    copyright: 'Copyright (c) 1985, 1987, 1989, 1990, 1997 Adobe Systems Incorporated. All Rights Reserved.',
    source: 'the AFM files that pdfkit carries, and MustRead.html of their distribution',
    texts: ['adobe-afm'],
    seen: ['pdfkit/js/data/Helvetica.afm', 'Copyright (c) 1985, 1987, 1989, 1990, 1997 Adobe Systems Incorporated.'],
  },
  wasm('HiGHS (the solver itself)', '1.15.1', 'MIT', 'Copyright (c) 2026 HiGHS', 'https://github.com/ERGO-Code/HiGHS', ['mit'], '1.15.1'),
  // What is compiled names no version of AMD and METIS: read in extern/amd/amd.h and extern/metis/metis.h of the solver's sources of 2026. RCM, cuPDLP-C and
  // pdqsort have none, and stand by the year of their copyright.
  // highs.wasm: THIRD_PARTY_NOTICES.md and /extern of HiGHS; what is named there and cannot be in a library (CLI11) or was left out (zstr, as the
  // solver says of itself: "build without zlib support") is not.
  wasm(
    'AMD',
    '3.3.4',
    'BSD-3-Clause',
    'Copyright (c) 1996-2024, Timothy A. Davis, Patrick R. Amestoy, and Iain S. Duff. All Rights Reserved.',
    'https://github.com/DrTimothyAldenDavis/SuiteSparse',
    ['bsd-3-clause'],
    '"metis", "amd" or "rcm"',
  ),
  wasm(
    'METIS and GKlib',
    '5.2.1',
    'Apache-2.0',
    'Copyright 1995-2013, Regents of the University of Minnesota',
    'https://github.com/KarypisLab/METIS',
    ['apache-2.0'],
    '"metis", "amd" or "rcm"',
  ),
  wasm(
    'RCM',
    '2005',
    'MIT',
    'Copyright (c) 2005 Alan George, Joseph Liu, John Burkardt.',
    'https://people.sc.fsu.edu/~jburkardt/cpp_src/rcm/rcm.html',
    ['mit'],
    '"metis", "amd" or "rcm"',
  ),
  wasm('cuPDLP-C', '2023', 'MIT', 'Copyright (c) 2023 COPT-Public', 'https://github.com/COPT-Public/cuPDLP-C', ['mit'], 'CuPdlp-C'),
  // A header of templates leaves no name in what is compiled; HiGHS sorts with it.
  wasm('pdqsort', '2015', 'Zlib', 'Copyright (c) 2015 Orson Peters', 'https://github.com/orlp/pdqsort', ['zlib'], null),
  // What a program compiled by Emscripten has linked in: its own runtime, the C library, the C++ library and the compiler's.
  wasm(
    'Emscripten',
    'as in highs',
    'MIT',
    'Copyright (c) 2010-2014 Emscripten authors, see AUTHORS file.',
    'https://github.com/emscripten-core/emscripten',
    ['mit'],
    null,
  ),
  wasm('musl libc', 'as in Emscripten', 'MIT', 'Copyright © 2005-2020 Rich Felker, et al.', 'https://musl.libc.org', ['mit'], null),
  wasm(
    'libc++, libc++abi, compiler-rt',
    'as in Emscripten',
    'Apache-2.0 WITH LLVM-exception',
    'The LLVM Project',
    'https://llvm.org',
    ['apache-2.0', 'llvm-exception'],
    null,
  ),
];

function wasm(name, version, licence, copyright, source, texts, sign) {
  return {
    within: 'highs',
    onlyCommand: true,
    name,
    version,
    licence,
    copyright,
    source,
    texts,
    seen: sign === null ? null : [WASM, sign],
  };
}
