//! The name of a choice, as documents write it.

use serde::ser::{Error, Impossible, Serialize, Serializer};
use std::fmt::Display;

/// The name of a choice without fields; nothing of anything else.
pub(crate) fn word(choice: &impl Serialize) -> &'static str {
    choice.serialize(Name).unwrap_or_default()
}

/// Takes the name of a choice and nothing else.
struct Name;

/// It was no choice without fields.
#[derive(Debug)]
struct Other;

impl Display for Other {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("no choice without fields")
    }
}

impl std::error::Error for Other {}

impl Error for Other {
    fn custom<T: Display>(_: T) -> Self {
        Self
    }
}

/// Methods that refuse what they are given.
macro_rules! no {
    ($($method:ident($($given:ty),*) $part:ty;)*) => {
        $(fn $method(self, $(_: $given),*) -> Result<$part, Other> {
            Err(Other)
        })*
    };
}

type Nothing = Impossible<&'static str, Other>;

impl Serializer for Name {
    type Ok = &'static str;
    type Error = Other;
    type SerializeSeq = Nothing;
    type SerializeTuple = Nothing;
    type SerializeTupleStruct = Nothing;
    type SerializeTupleVariant = Nothing;
    type SerializeMap = Nothing;
    type SerializeStruct = Nothing;
    type SerializeStructVariant = Nothing;

    fn serialize_unit_variant(self, _: &'static str, _: u32, name: &'static str) -> Result<Self::Ok, Other> {
        Ok(name)
    }

    no! {
        serialize_bool(bool) Self::Ok;
        serialize_i8(i8) Self::Ok;
        serialize_i16(i16) Self::Ok;
        serialize_i32(i32) Self::Ok;
        serialize_i64(i64) Self::Ok;
        serialize_u8(u8) Self::Ok;
        serialize_u16(u16) Self::Ok;
        serialize_u32(u32) Self::Ok;
        serialize_u64(u64) Self::Ok;
        serialize_f32(f32) Self::Ok;
        serialize_f64(f64) Self::Ok;
        serialize_char(char) Self::Ok;
        serialize_str(&str) Self::Ok;
        serialize_bytes(&[u8]) Self::Ok;
        serialize_none() Self::Ok;
        serialize_unit() Self::Ok;
        serialize_unit_struct(&'static str) Self::Ok;
        serialize_seq(Option<usize>) Nothing;
        serialize_tuple(usize) Nothing;
        serialize_tuple_struct(&'static str, usize) Nothing;
        serialize_tuple_variant(&'static str, u32, &'static str, usize) Nothing;
        serialize_map(Option<usize>) Nothing;
        serialize_struct(&'static str, usize) Nothing;
        serialize_struct_variant(&'static str, u32, &'static str, usize) Nothing;
    }

    fn serialize_some<T: Serialize + ?Sized>(self, _: &T) -> Result<Self::Ok, Other> {
        Err(Other)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: &T,
    ) -> Result<Self::Ok, Other> {
        Err(Other)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: &T,
    ) -> Result<Self::Ok, Other> {
        Err(Other)
    }
}
