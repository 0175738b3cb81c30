//! Support for the tests of the whole product.
